import { layoutOnBed } from '../jig/corner-frame.ts';
import type { StopsJob } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { cornerAt } from './places.ts';
import { lengthText } from './words.ts';

/** Where a placing's zero is: `the near-left corner of the blank` or `the middle of the blank`. */
export function zeroWords(job: StopsJob, at: Point<'layout'>): string {
  const { widthMm, heightMm } = job.blank;
  return at.x === widthMm / 2 && at.y === heightMm / 2
    ? 'the middle of the blank'
    : `the ${cornerAt(job, at)} corner of the blank`;
}

/** Whether the blank lies there already. */
export type Laid = 'as it lies' | 'as it will lie';

/** Whichever face is up: `140 mm from the left side of the blank as it lies`. */
export function fromLeftWords(job: StopsJob, x: number, laid: Laid): string {
  const side = `the left side of the blank ${laid}`;
  return x < 0
    ? `${lengthText(-x, job.shop.units)} to the left of ${side}`
    : `${lengthText(x, job.shop.units)} from ${side}`;
}

/** Whichever face is up: `90 mm in from the near side`. */
export function fromNearWords(job: StopsJob, y: number): string {
  return y < 0
    ? `${lengthText(-y, job.shop.units)} in front of the near side`
    : `${lengthText(y, job.shop.units)} in from the near side`;
}

/** `140 mm from the left side of the blank as it lies, 90 mm in from the near side`. */
export function machineWords(job: StopsJob, at: Point<'layout'>, laid: Laid): string {
  return `${fromLeftWords(job, at.x, laid)}, ${fromNearWords(job, at.y)}`;
}

/** `X 140 mm, Y 90 mm`, as the program of this placing counts. */
export function programWords(job: StopsJob, placing: Placing, at: Point<'layout'>): string {
  return xyWords(job, { x: at.x - placing.zero.x, y: at.y - placing.zero.y });
}

/** `X 210 mm, Y 160 mm` from the near-left corner of the bed. */
export function onBedWords(job: StopsJob, at: Point<'layout'>): string {
  return xyWords(job, layoutOnBed(job, at));
}

/** Whether the blank will cover this place of the bed. */
export function isUnderBlank(job: StopsJob, at: Point<'layout'>): boolean {
  return at.x >= 0 && at.x <= job.blank.widthMm && at.y >= 0 && at.y <= job.blank.heightMm;
}

export function xyWords(
  job: StopsJob,
  { x, y }: { readonly x: number; readonly y: number },
): string {
  return `X ${lengthText(x, job.shop.units)}, Y ${lengthText(y, job.shop.units)}`;
}

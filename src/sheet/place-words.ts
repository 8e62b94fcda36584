import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { cornerAt } from './places.ts';
import { lengthText } from './words.ts';

/** `the near-left corner of the blank`, `the middle of the blank`, or how far from its sides. */
export function placeWords(job: Job, at: Point<'layout'>): string {
  const { widthMm, heightMm } = job.blank;
  const onCorner = (at.x === 0 || at.x === widthMm) && (at.y === 0 || at.y === heightMm);
  if (onCorner) return `the ${cornerAt(job, at)} corner of the blank`;
  if (at.x === widthMm / 2 && at.y === heightMm / 2) return 'the middle of the blank';
  return `the place ${rightOf(job, at.x)} and ${beyond(job, at.y)} of the blank`;
}

/** `X 140 mm, Y 90 mm`, as the program of this placing counts. */
export function programWords(job: Job, placing: Placing, at: Point<'layout'>): string {
  const units = job.shop.units;
  return `X ${lengthText(at.x - placing.zero.x, units)}, Y ${lengthText(at.y - placing.zero.y, units)}`;
}

/** Whether the blank will cover this place of the bed. */
export function isUnderBlank(job: Job, at: Point<'layout'>): boolean {
  return at.x >= 0 && at.x <= job.blank.widthMm && at.y >= 0 && at.y <= job.blank.heightMm;
}

function rightOf(job: Job, x: number): string {
  return x < 0
    ? `${lengthText(-x, job.shop.units)} to the left of the left edge`
    : `${lengthText(x, job.shop.units)} to the right of the left edge`;
}

function beyond(job: Job, y: number): string {
  return y < 0
    ? `${lengthText(-y, job.shop.units)} in front of the near edge`
    : `${lengthText(y, job.shop.units)} beyond the near edge`;
}

import { layoutOnBed } from '../setup/place.ts';
import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { cornerIn } from './locating/piece.ts';
import { pieceOf, type Piece } from '../sweep/piece.ts';
import { lengthText } from './words.ts';

/** Where a placing's zero is: `the near-left corner of the blank`, `the middle of the blank`, or how far from its sides. */
export function zeroWords(job: Job, placing: Placing): string {
  const piece = pieceOf(job, placing);
  const at = placing.zero;
  const { lowX, lowY, highX, highY } = piece.box;
  const middle = isOne(at.x, (lowX + highX) / 2) && isOne(at.y, (lowY + highY) / 2);
  if (middle) return `the middle of the ${piece.name}`;
  const isCorner = piece.name === 'blank' && isEnd(at.x, lowX, highX) && isEnd(at.y, lowY, highY);
  return isCorner
    ? `the ${cornerIn(piece, at)} corner of the blank`
    : `the place ${machineWords(job, placing, at, 'as it lies')}`;
}

const isOne = (a: number, b: number): boolean => Math.abs(a - b) < SAME_MM;
const isEnd = (a: number, low: number, high: number): boolean => isOne(a, low) || isOne(a, high);

/** Far finer than what is written, far coarser than rounding at bed sizes, mm. */
const SAME_MM = 1e-6;

/** Whether the blank lies there already. */
export type Laid = 'as it lies' | 'as it will lie';

/** Whichever face is up: `140 mm from the left side of the blank as it lies`. */
export function fromLeftWords(job: Job, placing: Placing, x: number, laid: Laid): string {
  const { name, box } = pieceOf(job, placing);
  const side = `the left side of the ${name} ${laid}`;
  const inMm = x - box.lowX;
  if (isOne(inMm, 0)) return `at ${side}`;
  return inMm < 0
    ? `${lengthText(-inMm, job.shop.units)} to the left of ${side}`
    : `${lengthText(inMm, job.shop.units)} from ${side}`;
}

/** Whichever face is up: `90 mm in from the near side`. */
export function fromNearWords(job: Job, placing: Placing, y: number): string {
  const inMm = y - pieceOf(job, placing).box.lowY;
  if (isOne(inMm, 0)) return 'level with the near side';
  return inMm < 0
    ? `${lengthText(-inMm, job.shop.units)} in front of the near side`
    : `${lengthText(inMm, job.shop.units)} in from the near side`;
}

/** `140 mm from the left side of the blank as it lies, 90 mm in from the near side`. */
export function machineWords(job: Job, placing: Placing, at: Point<'layout'>, laid: Laid): string {
  return `${fromLeftWords(job, placing, at.x, laid)}, ${fromNearWords(job, placing, at.y)}`;
}

/** `X 140 mm, Y 90 mm`, as the program of this placing counts. */
export function programWords(job: Job, placing: Placing, at: Point<'layout'>): string {
  return xyWords(job, { x: at.x - placing.zero.x, y: at.y - placing.zero.y });
}

/** `X 210 mm, Y 160 mm` from the near-left corner of the bed. */
export function onBedWords(job: Job, at: Point<'layout'>): string {
  return xyWords(job, layoutOnBed(job, at));
}

/** Whether the piece that lies there covers this place of the bed, or nearly. */
export function isUnder({ box }: Piece, at: Point<'layout'>): boolean {
  return at.x >= box.lowX && at.x <= box.highX && at.y >= box.lowY && at.y <= box.highY;
}

export function xyWords(job: Job, { x, y }: { readonly x: number; readonly y: number }): string {
  return `X ${lengthText(x, job.shop.units)}, Y ${lengthText(y, job.shop.units)}`;
}

import { cannot, type Cannot } from '../answer.ts';
import type { Xy } from '../plate/drawing.ts';
import type { Demand } from './size.ts';
import { figure } from '../answer.ts';
import { partNumbers } from './numbers.ts';

/** Rows of holes: columns lettered along X, rows numbered along Y, the first hole at `first`. */
export interface GridWish {
  readonly columns: number;
  readonly rows: number;
  readonly pitchMm: number;
  readonly first: Xy;
}

export interface GridPlace {
  /** Such as `B12`. */
  readonly name: string;
  readonly at: Xy;
}

/** A round thing or a strip, straight along X or Y, that no hole may run into. */
export type Blocked =
  | { readonly kind: 'disc'; readonly at: Xy; readonly radiusMm: number }
  | { readonly kind: 'box'; readonly low: Xy; readonly high: Xy };

/** More holes than this are a slip of the finger. */
const MOST_HOLES = 2000;

/** Why so many holes are not made, or null. */
export const tooManyHoles = (part: string, { columns, rows }: GridWish): Cannot | null =>
  columns * rows > MOST_HOLES
    ? cannot(`${part}: ${columns} by ${rows} holes are too many`, `${MOST_HOLES} holes or fewer`)
    : null;

/** Holes that are not too near each other. */
export const pitchDemand = (pitchMm: number, holeMm: number): Demand => ({
  what: 'pitch',
  isMm: pitchMm,
  least: holeMm + partNumbers.betweenHolesMm,
  because: `holes of ${figure(holeMm)} would run into each other`,
});

/** The places of all holes that leave a wall to everything that is in their way, row by row. */
export function numberedGrid(
  { columns, rows, pitchMm, first }: GridWish,
  holeMm: number,
  blocked: readonly Blocked[],
): readonly GridPlace[] {
  const clearMm = holeMm / 2 + partNumbers.betweenHolesMm;
  return Array.from({ length: columns * rows }, (_, i): GridPlace => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    return {
      name: `${columnName(column)}${row + 1}`,
      at: { x: first.x + column * pitchMm, y: first.y + row * pitchMm },
    };
  }).filter(({ at }) => blocked.every((one) => toBlockedMm(at, one) >= clearMm));
}

function toBlockedMm(at: Xy, one: Blocked): number {
  if (one.kind === 'disc') return Math.hypot(at.x - one.at.x, at.y - one.at.y) - one.radiusMm;
  const out = (axis: 'x' | 'y'): number =>
    Math.max(one.low[axis] - at[axis], 0, at[axis] - one.high[axis]);
  return Math.hypot(out('x'), out('y'));
}

/** A to Z, then AA and on, as columns of a table are called. */
export function columnName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : columnName(Math.floor(index / 26) - 1) + letter;
}

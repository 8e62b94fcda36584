import type { Point } from '../plane/point.ts';
import { leastSquares } from '../num/least-squares.ts';

/** A height of the bed, mm, against the machine's travel. */
export interface Height {
  readonly at: Point<'bed'>;
  readonly heightMm: number;
}

/** A plane through heights: `heightMm` at the middle of the readings, leans as tangents. */
export interface BedPlane {
  readonly middle: Point<'bed'>;
  readonly heightMm: number;
  /** Rises to the right, and away from the operator. */
  readonly leanX: number;
  readonly leanY: number;
}

export interface FittedPlane extends BedPlane {
  readonly residualsMm: readonly number[];
  /** Root of the mean square of the residuals over what is to spare; NaN when nothing is. */
  readonly scatterMm: number;
  readonly dof: number;
  /** Share of each residual's place that the fit takes from the reading itself. */
  readonly leverages: readonly number[];
  /** Of height, lean X and lean Y, for readings of variance 1. */
  readonly unscaled: readonly (readonly number[])[];
}

/** Height of a plane at a place, mm. */
export const planeAt = (plane: BedPlane, at: Point<'bed'>): number =>
  plane.heightMm + plane.leanX * (at.x - plane.middle.x) + plane.leanY * (at.y - plane.middle.y);

/**
 * The plane with the least sum of squared heights off it; null when the places stand on one line or
 * are fewer than three. Heights are taken upright: a lean of 1 in 100 shortens them by 1 in 20000.
 */
export function leastSquaresPlane(heights: readonly Height[]): FittedPlane | null {
  if (heights.length < 3) return null;
  const middle = middleOf(heights);
  const fit = leastSquares(
    heights.map(({ at }) => [1, at.x - middle.x, at.y - middle.y]),
    heights.map(({ heightMm }) => heightMm),
  );
  if (fit === null || isOnOneLine(heights)) return null;
  const [heightMm, leanX, leanY] = fit.coefficients as [number, number, number];
  return {
    middle,
    heightMm,
    leanX,
    leanY,
    residualsMm: fit.residuals,
    scatterMm: fit.residualSd,
    dof: fit.dof,
    leverages: fit.leverages,
    unscaled: fit.unscaled,
  };
}

/** Greatest less least height off a plane, mm: flatness against that plane (ISO 12781-1, peak to valley). */
export function rangeOff(heights: readonly Height[], plane: BedPlane): number {
  let [low, high] = [Infinity, -Infinity];
  for (const { at, heightMm } of heights) {
    const off = heightMm - planeAt(plane, at);
    low = Math.min(low, off);
    high = Math.max(high, off);
  }
  return high - low;
}

/** Greatest less least height as it is read, mm: how far the bed is from being parallel to the travel. */
export function rangeOf(heights: readonly Height[]): number {
  const all = heights.map(({ heightMm }) => heightMm);
  return Math.max(...all) - Math.min(...all);
}

/** How far the readings spread across their own line, against along it, that still counts as one line. */
const THINNEST = 0.02;

/** Whether the places stand so nearly on one line that the lean across it cannot be told. */
export function isOnOneLine(heights: readonly Height[]): boolean {
  const { along, across } = spreadsOf(heights);
  return !(across > THINNEST * along);
}

/** Root mean square spread of the places along their own longest direction and across it, and that direction. */
export function spreadsOf(heights: readonly Height[]): {
  readonly middle: Point<'bed'>;
  readonly along: number;
  readonly across: number;
  readonly turnRad: number;
} {
  const middle = middleOf(heights);
  let [xx, xy, yy] = [0, 0, 0];
  for (const { at } of heights) {
    const [dx, dy] = [at.x - middle.x, at.y - middle.y];
    xx += (dx * dx) / heights.length;
    xy += (dx * dy) / heights.length;
    yy += (dy * dy) / heights.length;
  }
  const turnRad = 0.5 * Math.atan2(2 * xy, xx - yy);
  const half = Math.hypot((xx - yy) / 2, xy);
  const mean = (xx + yy) / 2;
  return {
    middle,
    along: Math.sqrt(mean + half),
    across: Math.sqrt(Math.max(0, mean - half)),
    turnRad,
  };
}

function middleOf(heights: readonly Height[]): Point<'bed'> {
  const sum = heights.reduce((s, { at }) => ({ x: s.x + at.x, y: s.y + at.y }), { x: 0, y: 0 });
  return { x: sum.x / heights.length, y: sum.y / heights.length };
}

import { cosineOf } from '../num/elementary.ts';
import { dipBetween, FAN, FAN_STEP, FAN_X, FAN_Y } from './fan.ts';
import { gapInRound } from './round-gap.ts';
import { reach, type Landed } from './support.ts';

/**
 * The smallest, over all directions, of how much further `outer` reaches than `inner`: of two convex
 * outlines one within the other the least distance between them, and less than 0, by how much, where
 * `inner` sticks out. Kinks of the difference that point down are the sides of `outer`: each is
 * tried; between them the difference is smooth and its dips are closed in on from a fan of
 * directions (to 5e-6 of how far apart the vertices are that face each other).
 */
export function leastGap(outer: Landed, inner: Landed): number {
  const short = gapInRound(outer, inner);
  if (short !== null) return short;
  const gap = (ux: number, uy: number): number => reach(outer, ux, uy) - reach(inner, ux, uy);
  const values = new Float64Array(FAN);
  const isSmooth = outer.x.length === 1 && inner.x.length === 1;
  for (let k = 0; k < FAN; k++) values[k] = gap(FAN_X[k]!, FAN_Y[k]!);
  let least = Infinity;
  eachSide(outer, (ux, uy) => {
    least = Math.min(least, gap(ux, uy));
  });
  let coarse = least;
  for (let k = 0; k < FAN; k++) coarse = Math.min(coarse, values[k]!);
  const acrossMm =
    reach(outer, 1, 0) + reach(outer, -1, 0) + reach(outer, 0, 1) + reach(outer, 0, -1);
  const worth = coarse + FAN_MISS * acrossMm;
  for (let k = 0; k < FAN; k++) {
    const here = values[k]!;
    if (here > worth || here > values[(k + 1) % FAN]! || here > values[(k + FAN - 1) % FAN]!)
      continue;
    least = Math.min(least, here, dipInFan(gap, k, values, isSmooth));
  }
  return least;
}

/** Golden sections that leave 3e-3 rad of two steps of the fan. */
const SECTIONS = 10;
/** Half the width of the last parabola through a smooth dip, as a tangent. */
const NARROW = 0.02;

/** What a dip between two fan directions may be lower than both, as a share of how far apart its vertices are. */
export const FAN_MISS = 1 - cosineOf(Math.PI / FAN);

type OfDirection = (ux: number, uy: number) => number;

/** A function of direction beside fan direction `k`, of how far it leans to the left, as a tangent. */
const leaning =
  (f: OfDirection, k: number): ((s: number) => number) =>
  (s) => {
    const length = Math.sqrt(1 + s * s);
    return f((FAN_X[k]! - s * FAN_Y[k]!) / length, (FAN_Y[k]! + s * FAN_X[k]!) / length);
  };

/** The dip of a function of direction between the neighbours of fan direction `k`, by golden sections. */
export const dipBeside = (f: OfDirection, k: number, sections: number): number =>
  dipBetween(leaning(f, k), -FAN_STEP, FAN_STEP, sections);

/**
 * The same where the values in the fan are known. Without kinks two parabolas find the dip: the first to
 * some 0.004 rad, the second to 1e-6.
 */
export function dipInFan(
  f: OfDirection,
  k: number,
  values: Float64Array,
  isSmooth: boolean,
): number {
  if (!isSmooth) return dipBeside(f, k, SECTIONS);
  const beside = leaning(f, k);
  const [before, after] = [values[(k + FAN - 1) % FAN]!, values[(k + 1) % FAN]!];
  const bend = before + after - 2 * values[k]!;
  if (bend <= 0) return values[k]!;
  const dip = (FAN_STEP * (before - after)) / (2 * bend);
  const [low, middle, high] = [beside(dip - NARROW), beside(dip), beside(dip + NARROW)];
  const narrowBend = low + high - 2 * middle;
  return narrowBend <= 0 ? middle : middle - (high - low) ** 2 / (8 * narrowBend);
}

/** Each direction in which two neighbouring vertices of an outline reach alike: square to its sides. */
export function eachSide(outline: Landed, say: (ux: number, uy: number) => void): void {
  const { x, y, more } = outline;
  const n = x.length;
  if (n < 2) return;
  for (let k = 0; k < n; k++) {
    const next = (k + 1) % n;
    const [dx, dy] = [x[next]! - x[k]!, y[next]! - y[k]!];
    const length = Math.sqrt(dx * dx + dy * dy);
    // Where one end grew more than the other the side leans by the difference.
    const lean = (more[k]! - more[next]!) / length;
    const across = Math.sqrt(1 - lean * lean);
    const [tx, ty] = [dx / length, dy / length];
    say(across * ty + lean * tx, lean * ty - across * tx);
  }
}

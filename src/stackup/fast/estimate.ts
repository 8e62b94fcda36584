import { studentQuantile } from '../../num/textbook.ts';
import { REPLICATES } from './points.ts';
import type { ShareBelow } from './shares-below.ts';

/** A number, and the half-width of its 99 % interval by the scatter of the replicates. */
export interface Estimate {
  readonly value: number;
  readonly sure: number;
}

/** Half-widths of 99 % intervals are so many standard errors. */
export const T_99 = studentQuantile(0.995, REPLICATES - 1);

/** From one value a replicate. */
export function estimateOf(each: ArrayLike<number>): Estimate {
  let sum = 0;
  for (let r = 0; r < REPLICATES; r++) sum += each[r]!;
  const value = sum / REPLICATES;
  let squares = 0;
  for (let r = 0; r < REPLICATES; r++) squares += (each[r]! - value) ** 2;
  return { value, sure: T_99 * Math.sqrt(squares / (REPLICATES - 1) / REPLICATES) };
}

/** The share below a value, one a replicate. */
export function sharesAt(below: ShareBelow, value: number, count: number): Float64Array {
  const shares = new Float64Array(REPLICATES);
  for (let r = 0; r < REPLICATES; r++) {
    let sum = 0;
    for (let i = r * count; i < (r + 1) * count; i++) sum += below(i, value);
    shares[r] = sum / count;
  }
  return shares;
}

/** 0 or 1: what a point itself tells. */
export const raw =
  (values: Float64Array): ShareBelow =>
  (i, value) =>
    values[i]! <= value ? 1 : 0;

/**
 * The value below which a share `p` lies: three secant steps from `start`, the last of them replicate by replicate.
 *
 * @param reach a first step, about a tenth of a standard deviation.
 */
export function quantileBy(
  below: ShareBelow,
  p: number,
  start: number,
  reach: number,
  count: number,
): Estimate {
  let [t, other] = [start, start + (p < 0.5 ? reach : -reach)];
  let [shares, far] = [sharesAt(below, t, count), estimateOf(sharesAt(below, other, count)).value];
  let density = 0;
  for (let step = 0; step < 2; step++) {
    const here = estimateOf(shares).value;
    density = (far - here) / (other - t);
    if (!(density > 0)) return { value: t, sure: Infinity };
    const next = t + (p - here) / density;
    // So near already that the line through both would be all rounding.
    if (Math.abs(next - t) < 1e-4 * reach) break;
    [other, far] = [t, here];
    t = next;
    shares = sharesAt(below, t, count);
  }
  return estimateOf(shares.map((share) => t + (p - share) / density));
}

/**
 * Whether a smoothed share and the raw one of the same points agree, by their paired difference; what smoothing
 * gets wrong, its own scatter does not show.
 */
export function agree(smooth: Float64Array, rough: Float64Array, count: number): boolean {
  const { value, sure } = estimateOf(smooth.map((share, r) => share - rough[r]!));
  const p = estimateOf(smooth).value;
  // Rough shares of rare things are all nought together: then a count's own scatter is the measure.
  const counted = (T_99 / 2) * Math.sqrt(Math.max(0, p * (1 - p)) / (REPLICATES * count));
  return Math.abs(value) <= Math.max(sure, counted);
}

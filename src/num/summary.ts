import { invariant } from './invariant.ts';

/** Mean and standard deviation (n - 1) by two passes. */
export function momentsOf(values: Float64Array): { readonly mean: number; readonly sd: number } {
  const n = values.length;
  invariant(n > 1, 'moments need two values or more');
  let sum = 0;
  for (let i = 0; i < n; i++) sum += values[i]!;
  const mean = sum / n;
  let squares = 0;
  let rest = 0;
  for (let i = 0; i < n; i++) {
    const off = values[i]! - mean;
    squares += off * off;
    rest += off;
  }
  return { mean: mean + rest / n, sd: Math.sqrt((squares - (rest * rest) / n) / (n - 1)) };
}

/** Covariance (n - 1) of two columns. */
export function covarianceOf(one: Float64Array, other: Float64Array): number {
  const [a, b] = [momentsOf(one).mean, momentsOf(other).mean];
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += (one[i]! - a) * (other[i]! - b);
  return sum / (one.length - 1);
}

/**
 * The interval that holds a share `p` of sorted trials with equal shares left out on both sides.
 * Source: JCGM 101:2008, 7.7.
 */
export function symmetricInterval(sorted: Float64Array, p: number): readonly [number, number] {
  const { held, count } = heldBy(sorted, p);
  const spare = count - held;
  const rank = spare % 2 === 0 ? spare / 2 : Math.floor((spare + 1) / 2);
  return [sorted[Math.max(0, rank - 1)]!, sorted[Math.min(count - 1, rank - 1 + held)]!];
}

/** The shortest interval that holds a share `p` of sorted trials. Source: JCGM 101:2008, 7.7. */
export function shortestInterval(sorted: Float64Array, p: number): readonly [number, number] {
  const { held, count } = heldBy(sorted, p);
  let best = 0;
  for (let r = 1; r + held < count; r++) {
    if (sorted[r + held]! - sorted[r]! < sorted[best + held]! - sorted[best]!) best = r;
  }
  return [sorted[best]!, sorted[best + held]!];
}

function heldBy(
  sorted: Float64Array,
  p: number,
): { readonly held: number; readonly count: number } {
  const count = sorted.length;
  const held = Math.floor(p * count + 0.5);
  invariant(held < count, `an interval of ${p} needs more than ${count} trials`);
  return { held, count };
}

// Exact summaries of trials that are all at hand: what the engine's bins are held against.
import { invariant } from '../../src/num/invariant.ts';
import { momentsOfSome, sdOfMoments } from '../../src/num/moments.ts';

/** Mean and standard deviation (n - 1) by two passes. */
export function momentsOf(values: Float64Array): { readonly mean: number; readonly sd: number } {
  const n = values.length;
  invariant(n > 1, 'moments need two values or more');
  const moments = momentsOfSome(values, n);
  return { mean: moments.mean, sd: sdOfMoments(moments) };
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

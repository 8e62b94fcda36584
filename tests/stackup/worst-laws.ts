import { expect } from 'vitest';
import { streamOf, uniformOf } from '../../src/num/stream.ts';
import { limitsOfInputs } from '../../src/stackup/climb.ts';
import { straightOf } from '../../src/stackup/first-order.ts';
import type { Model } from '../../src/stackup/model.ts';
import { atOnce } from '../../src/stackup/steps.ts';
import { evaluateAt } from '../../src/stackup/trials.ts';
import { worstFigure, worstRadius } from '../../src/stackup/worst.ts';
import { modelOfFunction, rectangular } from './a-model.ts';

/** Numbers between -1 and 1 by a seed. */
function luck(seed: number): () => number {
  const word = streamOf(seed, 0x6c75636b, 0, 1);
  return () => 2 * uniformOf(word()) - 1;
}

/** So many sums of inputs, of random weights. */
const sumsOf = (next: () => number, inputs: number, sums: number): number[][] =>
  Array.from({ length: sums }, () => Array.from({ length: inputs }, next));

export const dot = (weights: readonly number[], x: readonly number[]): number =>
  weights.reduce((sum, weight, k) => sum + weight * x[k]!, 0);

/** Contacts as in a seat: of several straight faces the highest touches, twice, and a product of two angles. */
export function switching(seed: number, inputs: number): Model {
  const next = luck(seed);
  const [one, other] = [sumsOf(next, inputs, 3), sumsOf(next, inputs, 3)];
  const [u, v] = sumsOf(next, inputs, 2) as [number[], number[]];
  return modelOfFunction(
    Array.from({ length: inputs }, () => rectangular(-Math.abs(next()) - 0.1, Math.abs(next()))),
    (x) => [
      Math.max(...one.map((face) => dot(face, x))) -
        Math.max(...other.map((face) => dot(face, x))) +
        0.3 * dot(u, x) * dot(v, x),
      dot(v, x) + Math.max(0, dot(u, x)),
    ],
    2,
  );
}

/** Least and greatest of a score over all corners. */
export function corners(
  model: Model,
  score: (result: readonly number[]) => number,
): readonly [number, number] {
  const limits = limitsOfInputs(model);
  const places = Array.from({ length: 2 ** limits.length }, (_, mask) =>
    Float64Array.from(limits, (range, k) => range[(mask >> k) % 2]!),
  );
  const scores = evaluateAt(model, places).map(score);
  return [scores.reduce((a, b) => Math.min(a, b)), scores.reduce((a, b) => Math.max(a, b))];
}

/** By what share of its width the search for the worst case falls short of the corners of a random model, low and high. */
export function shortBy(seed: number, inputs: number): readonly [number, number] {
  const model = switching(seed, inputs);
  const [low, high] = corners(model, ([first]) => first!);
  const [least, most] = atOnce(worstFigure(model, straightOf(model), 0));
  return [(least - low) / (high - low), (high - most) / (high - low)];
}

/** The search reaches every corner of a random model, to the rounding of a few sums of numbers below 10. */
export function expectReachesCorners(seed: number, inputs: number): void {
  const model = switching(seed, inputs);
  const line = straightOf(model);
  const [low, high] = corners(model, ([first]) => first!);
  const [least, most] = atOnce(worstFigure(model, line, 0));
  expect(least).toBeLessThanOrEqual(low + 1e-13);
  expect(most).toBeGreaterThanOrEqual(high - 1e-13);
  const [, farthest] = corners(model, ([x, y]) => Math.hypot(x!, y!));
  expect(atOnce(worstRadius(model, line, 0, 1))[1]).toBeGreaterThanOrEqual(farthest - 1e-13);
}

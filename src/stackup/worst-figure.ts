import { limitsOf } from '../num/spread-of.ts';
import type { Straight } from './first-order.ts';
import type { Model } from './model.ts';
import { climb } from './worst.ts';

/**
 * Least and greatest of one result with every input within its limits (unbounded inputs as in rule 12):
 * from the corner that the straight model points to, and from where nothing is off, inputs are put to
 * their other limit one by one as long as that helps. A search, not a proof.
 */
export function worstFigure(model: Model, line: Straight, at: number): readonly [number, number] {
  const limits = model.inputs.map(({ distribution }) => limitsOf(distribution));
  const nearest = Float64Array.from(limits, ([low, high]) => Math.min(high, Math.max(low, 0)));
  const furthest = (sign: 1 | -1): number => {
    const corner = Float64Array.from(limits, ([low, high], k) =>
      sign * line.slopes[at]![k]! < 0 ? low : high,
    );
    const score = (result: readonly number[]): number => sign * result[at]!;
    return Math.max(climb(model, limits, corner, score), climb(model, limits, nearest, score));
  };
  return [-furthest(-1), furthest(1)];
}

/** The same for the straight model: the sum of what each input does at its limits. */
export function worstStraightFigure(
  model: Model,
  line: Straight,
  at: number,
): readonly [number, number] {
  let low = line.atMeans[at]!;
  let high = low;
  model.inputs.forEach(({ distribution }, k) => {
    const ends = limitsOf(distribution).map((end) => line.slopes[at]![k]! * (end - line.means[k]!));
    low += Math.min(...ends);
    high += Math.max(...ends);
  });
  return [low, high];
}

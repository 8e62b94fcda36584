import type { Straight } from './first-order.ts';
import type { Model } from './model.ts';
import { climb, limitsOfInputs, nearestToNothing, type Score } from './worst.ts';

/**
 * Least and greatest of one result with every input within its limits, by searches from the corner that
 * the straight model points to and from where as little as possible is off.
 */
export function worstFigure(model: Model, line: Straight, at: number): readonly [number, number] {
  const limits = limitsOfInputs(model);
  const nearest = nearestToNothing(limits);
  const furthest = (sign: 1 | -1): number => {
    const corner = Float64Array.from(limits, ([low, high], k) =>
      sign * line.slopes[at]![k]! < 0 ? low : high,
    );
    const score: Score = (result) => sign * result[at]!;
    return Math.max(climb(model, limits, corner, score), climb(model, limits, nearest, score));
  };
  return [-furthest(-1), furthest(1)];
}

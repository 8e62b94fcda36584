import { limitsOf } from '../num/spread-of.ts';
import type { Straight } from './first-order.ts';
import type { Model } from './model.ts';
import { evaluateAt } from './trials.ts';

export type Limits = readonly (readonly [number, number])[];

/** What is sought the greatest of, in the results of one place. */
export type Score = (result: readonly number[]) => number;

/** The limits of every input; of unbounded ones as in registration.md rule 12. */
export const limitsOfInputs = (model: Model): Limits =>
  model.inputs.map(({ distribution }) => limitsOf(distribution));

/** Where as little as possible is off. */
export const nearestToNothing = (limits: Limits): Float64Array =>
  Float64Array.from(limits, ([low, high]) => Math.min(high, Math.max(low, 0)));

/** Shares of the way between the limits at which the greatest may lie when it is at no corner. */
const BETWEEN = [0.5, 0.25, 0.75];
/** Steps, as shares of the way between the limits, by which a place between them is refined. */
const REFINED = [1 / 8, 1 / 16, 1 / 32, 1 / 64, 1 / 128];

/**
 * The greatest score that a search over corners, then over places between the limits, comes to from
 * `start`, by the one change that helps most each time. A search, not a proof: never more than the truth.
 */
export function climb(model: Model, limits: Limits, start: Float64Array, score: Score): number {
  const here = start.slice();
  const reached = { best: score(evaluateAt(model, [here])[0]!) };
  const corners = (k: number): number[] => [...limits[k]!];
  while (improved(model, here, reached, score, corners));
  const between = (k: number): number[] => {
    const [low, high] = limits[k]!;
    return BETWEEN.map((share) => low + share * (high - low));
  };
  if (!improved(model, here, reached, score, between)) return reached.best;
  while (improved(model, here, reached, score, between));
  while (improved(model, here, reached, score, corners));
  for (const step of REFINED) {
    const nearby = (k: number): number[] => {
      const [low, high] = limits[k]!;
      return [-1, 1].map((sign) =>
        Math.min(high, Math.max(low, here[k]! + sign * step * (high - low))),
      );
    };
    while (improved(model, here, reached, score, nearby));
  }
  return reached.best;
}

/** Moves `here` to the best of the places that single inputs at their `ends` give, if any is better. */
function improved(
  model: Model,
  here: Float64Array,
  reached: { best: number },
  score: Score,
  ends: (k: number) => readonly number[],
): boolean {
  const changes = Array.from(here, (value, k) =>
    ends(k)
      .filter((end) => end !== value)
      .map((end) => ({ k, end })),
  ).flat();
  const places = changes.map(({ k, end }) => {
    const place = here.slice();
    place[k] = end;
    return place;
  });
  let winner = -1;
  evaluateAt(model, places).forEach((result, index) => {
    const value = score(result);
    if (value > reached.best) {
      reached.best = value;
      winner = index;
    }
  });
  if (winner < 0) return false;
  here[changes[winner]!.k] = changes[winner]!.end;
  return true;
}

/** Directions from which the search for the farthest miss starts. */
const DIRECTIONS = 16;

/**
 * Least and greatest length of the vector (x, y) of two outputs with every input within its limits, by
 * searches from the corners that the straight model points to in 16 directions.
 */
export function worstRadius(
  model: Model,
  line: Straight,
  x: number,
  y: number,
): readonly [number, number] {
  const limits = limitsOfInputs(model);
  const radius: Score = (result) => Math.hypot(result[x]!, result[y]!);
  let greatest = 0;
  for (let d = 0; d < DIRECTIONS; d++) {
    const turn = (2 * Math.PI * d) / DIRECTIONS;
    const start = Float64Array.from(limits, ([low, high], k) => {
      const slope = line.slopes[x]![k]! * Math.cos(turn) + line.slopes[y]![k]! * Math.sin(turn);
      return slope < 0 ? low : high;
    });
    greatest = Math.max(greatest, climb(model, limits, start, radius));
  }
  const least = -climb(model, limits, nearestToNothing(limits), (result) => -radius(result));
  return [least, greatest];
}

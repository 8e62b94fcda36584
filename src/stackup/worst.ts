import { cosineOf, hypotenuse, sineOf } from '../num/elementary.ts';
import { greatest, limitsOfInputs, nearestToNothing, type Limits, type Score } from './climb.ts';
import type { Straight } from './first-order.ts';
import type { Model } from './model.ts';
import type { Steps } from './steps.ts';
import { evaluateAt } from './trials.ts';

export type Range = readonly [number, number];

/** Corners to start from, and what is sought the greatest of. */
interface Search {
  readonly starts: readonly Float64Array[];
  readonly score: Score;
}

/** Directions from which the search for the farthest miss starts. */
const DIRECTIONS = 16;

/**
 * Least and greatest of one result with every input within its limits, by searches from the corner that
 * the straight model points to and from where as little as possible is off.
 */
export function* worstFigure(model: Model, line: Straight, at: number): Steps<Range> {
  const limits = limitsOfInputs(model);
  const nearest = nearestToNothing(limits);
  const [low, high] = figureSearches(limits, line, at);
  const least = yield* greatest(model, limits, [...low.starts, nearest], low.score);
  const most = yield* greatest(model, limits, [...high.starts, nearest], high.score);
  return [-least, most];
}

/** The same without a search: at the corners that the straight model points to. */
export function cornerFigure(model: Model, line: Straight, at: number): Range {
  const [low, high] = figureSearches(limitsOfInputs(model), line, at);
  return [-bestOf(model, low), bestOf(model, high)];
}

function figureSearches(limits: Limits, line: Straight, at: number): readonly [Search, Search] {
  const towards = (sign: 1 | -1): Search => ({
    starts: [cornerTowards(limits, (k) => sign * line.slopes[at]![k]!)],
    score: (result) => sign * result[at]!,
  });
  return [towards(-1), towards(1)];
}

/**
 * Least and greatest length of the vector (x, y) of two outputs with every input within its limits, by
 * searches from the corners that the straight model points to in 16 directions.
 */
export function* worstRadius(model: Model, line: Straight, x: number, y: number): Steps<Range> {
  const limits = limitsOfInputs(model);
  const { starts, score } = radiusSearch(limits, line, x, y);
  const most = yield* greatest(model, limits, starts, score);
  const nearest = nearestToNothing(limits);
  const least = yield* greatest(model, limits, [nearest], (result) => -score(result));
  return [-least, most];
}

/** The same without a search. */
export function cornerRadius(model: Model, line: Straight, x: number, y: number): Range {
  const limits = limitsOfInputs(model);
  const search = radiusSearch(limits, line, x, y);
  const nothing = { starts: [nearestToNothing(limits)], score: search.score };
  return [bestOf(model, nothing), bestOf(model, search)];
}

function radiusSearch(limits: Limits, line: Straight, x: number, y: number): Search {
  const starts = Array.from({ length: DIRECTIONS }, (_, d) => {
    const turn = (2 * Math.PI * d) / DIRECTIONS;
    const [c, s] = [cosineOf(turn), sineOf(turn)];
    return cornerTowards(limits, (k) => line.slopes[x]![k]! * c + line.slopes[y]![k]! * s);
  });
  return { starts, score: (result) => hypotenuse(result[x]!, result[y]!) };
}

const cornerTowards = (limits: Limits, slope: (k: number) => number): Float64Array =>
  Float64Array.from(limits, ([low, high], k) => (slope(k) < 0 ? low : high));

const bestOf = (model: Model, { starts, score }: Search): number =>
  Math.max(...evaluateAt(model, starts).map(score));

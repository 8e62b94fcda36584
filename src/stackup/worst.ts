import { limitsOf } from '../num/spread-of.ts';
import type { Straight } from './first-order.ts';
import type { Model } from './model.ts';
import { evaluateAt } from './trials.ts';

/** Directions from which the search for the farthest miss starts. */
const DIRECTIONS = 16;

/**
 * Least and greatest length of the vector (x, y) of two outputs with every input within its limits:
 * from the corner that the straight model points to in each of 16 directions, inputs are put to
 * their other limit one by one as long as that helps. Unbounded inputs are limited as in rule 12.
 * The greatest is a search, not a proof: a corner that needs two changes at once can be missed.
 */
export function worstRadius(
  model: Model,
  line: Straight,
  x: number,
  y: number,
): readonly [number, number] {
  const limits = model.inputs.map(({ distribution }) => limitsOf(distribution));
  const radius = (result: readonly number[]): number => Math.hypot(result[x]!, result[y]!);
  let greatest = 0;
  for (let d = 0; d < DIRECTIONS; d++) {
    const turn = (2 * Math.PI * d) / DIRECTIONS;
    const start = Float64Array.from(limits, ([low, high], k) => {
      const slope = line.slopes[x]![k]! * Math.cos(turn) + line.slopes[y]![k]! * Math.sin(turn);
      return slope < 0 ? low : high;
    });
    greatest = Math.max(greatest, climb(model, limits, start, radius));
  }
  const nearest = Float64Array.from(limits, ([low, high]) => Math.min(high, Math.max(low, 0)));
  const least = -climb(model, limits, nearest, (result) => -radius(result));
  return [least, greatest];
}

/**
 * The best score that putting single inputs to one of their limits reaches from `start`.
 */
export function climb(
  model: Model,
  limits: readonly (readonly [number, number])[],
  start: Float64Array,
  score: (result: readonly number[]) => number,
): number {
  const here = start.slice();
  let best = score(evaluateAt(model, [here])[0]!);
  for (;;) {
    const changes = limits.flatMap(([low, high], k) =>
      [low, high].filter((end) => end !== here[k]).map((end) => ({ k, end })),
    );
    const places = changes.map(({ k, end }) => {
      const place = here.slice();
      place[k] = end;
      return place;
    });
    let winner = -1;
    evaluateAt(model, places).forEach((result, index) => {
      const value = score(result);
      if (value > best) {
        best = value;
        winner = index;
      }
    });
    if (winner < 0) return best;
    here[changes[winner]!.k] = changes[winner]!.end;
  }
}

/** The same for the straight model: the farthest point of the sum of all inputs' segments. */
export function worstStraightRadius(
  model: Model,
  line: Straight,
  x: number,
  y: number,
): readonly [number, number] {
  const segments = model.inputs.map(({ distribution }, k) => {
    const [low, high] = limitsOf(distribution);
    const [a, b] = [line.slopes[x]![k]!, line.slopes[y]![k]!];
    return { a, b, middle: (low + high) / 2 - line.means[k]!, half: (high - low) / 2 };
  });
  let centreX = line.atMeans[x]!;
  let centreY = line.atMeans[y]!;
  for (const { a, b, middle } of segments) {
    centreX += a * middle;
    centreY += b * middle;
  }
  let farthest = 0;
  // The sum of segments is convex: its reach in each direction bounds it; 1440 directions are 4e-6 short.
  const steps = 1440;
  for (let d = 0; d < steps; d++) {
    const [c, s] = [Math.cos((2 * Math.PI * d) / steps), Math.sin((2 * Math.PI * d) / steps)];
    let reach = centreX * c + centreY * s;
    for (const { a, b, half } of segments) reach += Math.abs(a * c + b * s) * half;
    farthest = Math.max(farthest, reach);
  }
  return [0, farthest];
}

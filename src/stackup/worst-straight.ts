import { cosineOf, sineOf } from '../num/elementary.ts';
import { limitsOf } from '../num/spread-of.ts';
import type { Straight } from './first-order.ts';
import type { Model } from './model.ts';

/** Least and greatest of one result of the straight model: the sum of what each input does at its limits. */
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

/** Greatest length of the vector (x, y) of the straight model: the farthest point of the sum of all inputs' segments. */
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
    const [c, s] = [cosineOf((2 * Math.PI * d) / steps), sineOf((2 * Math.PI * d) / steps)];
    let reach = centreX * c + centreY * s;
    for (const { a, b, half } of segments) reach += Math.abs(a * c + b * s) * half;
    farthest = Math.max(farthest, reach);
  }
  return [0, farthest];
}

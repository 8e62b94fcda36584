import { invariant } from '../num/invariant.ts';
import type { BedPlane, Height } from './bed-plane.ts';
import { leastSquaresPlane, planeAt, rangeOff, spreadsOf } from './bed-plane.ts';

export interface MinimumZone {
  /** Half-way between the two planes. */
  readonly plane: BedPlane;
  /** Distance of the two parallel planes that hold all heights between them, mm. */
  readonly flatnessMm: number;
}

/** Halvings of a bracket that reach the last digit of a double. */
const STEPS = 78;

/**
 * The two parallel planes closest together that hold all heights between them (ISO 1101); null where
 * no plane can be fitted. The distance is a convex function of the two leans, so each is closed in
 * on by golden section, one within the other, in coordinates as wide as long; it cannot lie
 * further from the least-squares leans than that plane's own flatness over the spread of the places.
 */
export function minimumZone(heights: readonly Height[]): MinimumZone | null {
  const fitted = leastSquaresPlane(heights);
  if (fitted === null) return null;
  const { middle, along, across, turnRad } = spreadsOf(heights);
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const n = heights.length;
  const [u, v, r] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  heights.forEach((height, i) => {
    const [dx, dy] = [height.at.x - middle.x, height.at.y - middle.y];
    u[i] = (c * dx + s * dy) / along;
    v[i] = (c * dy - s * dx) / across;
    r[i] = height.heightMm - planeAt(fitted, height.at);
  });
  const reach = rangeOff(heights, fitted);
  if (reach === 0) return { plane: fitted, flatnessMm: 0 };
  const zone = (p: number, q: number): { readonly low: number; readonly high: number } => {
    let [low, high] = [Infinity, -Infinity];
    for (let i = 0; i < n; i++) {
      const off = r[i]! - p * u[i]! - q * v[i]!;
      if (off < low) low = off;
      if (off > high) high = off;
    }
    return { low, high };
  };
  const width = (p: number, q: number): number => {
    const { low, high } = zone(p, q);
    return high - low;
  };
  const bestQ = (p: number): number => lowest((q) => width(p, q), -reach, reach);
  const p = lowest((at) => width(at, bestQ(at)), -reach, reach);
  const q = bestQ(p);
  const { low, high } = zone(p, q);
  const [leanU, leanV] = [p / along, q / across];
  const plane: BedPlane = {
    middle,
    heightMm: fitted.heightMm + (low + high) / 2,
    leanX: fitted.leanX + c * leanU - s * leanV,
    leanY: fitted.leanY + s * leanU + c * leanV,
  };
  invariant(
    high - low <= reach * (1 + 1e-12),
    'the minimum zone is wider than the least-squares one',
  );
  return { plane, flatnessMm: high - low };
}

const GOLD = (Math.sqrt(5) - 1) / 2;

/** Where a convex function is lowest between two places. */
function lowest(value: (at: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [x1, x2] = [b - GOLD * (b - a), a + GOLD * (b - a)];
  let [f1, f2] = [value(x1), value(x2)];
  for (let step = 0; step < STEPS; step++) {
    if (f1 <= f2) {
      [b, x2, f2] = [x2, x1, f1];
      x1 = b - GOLD * (b - a);
      f1 = value(x1);
    } else {
      [a, x1, f1] = [x1, x2, f2];
      x2 = a + GOLD * (b - a);
      f2 = value(x2);
    }
  }
  return (a + b) / 2;
}

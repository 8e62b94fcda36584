import { BATCH } from '../num/batch.ts';

/** Count, means and sums of squared and crossed deviations of a vector so far. */
export interface PlaneMoments {
  count: number;
  meanX: number;
  meanY: number;
  xx: number;
  yy: number;
  xy: number;
}

/** Of the first `count` trials of a batch, the vector in columns `column` and `column + 1`, by two passes. */
export function planeOfSome(out: Float64Array, column: number, count: number): PlaneMoments {
  const [x, y] = [column * BATCH, (column + 1) * BATCH];
  let [sumX, sumY] = [0, 0];
  for (let i = 0; i < count; i++) {
    sumX += out[x + i]!;
    sumY += out[y + i]!;
  }
  const many = Math.max(1, count);
  const [meanX, meanY] = [sumX / many, sumY / many];
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const [a, b] = [out[x + i]! - meanX, out[y + i]! - meanY];
    xx += a * a;
    yy += b * b;
    xy += a * b;
  }
  return { count, meanX, meanY, xx, yy, xy };
}

/** Adds a second group to the first; source as `joinMoments`. */
export function joinPlane(into: PlaneMoments, other: PlaneMoments): void {
  const count = into.count + other.count;
  if (count === 0) return;
  const [offX, offY] = [other.meanX - into.meanX, other.meanY - into.meanY];
  const weight = (into.count * other.count) / count;
  into.xx += other.xx + offX * offX * weight;
  into.yy += other.yy + offY * offY * weight;
  into.xy += other.xy + offX * offY * weight;
  into.meanX += (offX * other.count) / count;
  into.meanY += (offY * other.count) / count;
  into.count = count;
}

import { angleOf, cosineOf, sineOf } from '../num/elementary.ts';
import type { Region } from './prediction.ts';
import type { PlaneMoments } from './plane-moments.ts';

const SHARE = 0.95;

/**
 * The ellipse and the rectangle about the mean that hold 95 % of a vector: their shape from the covariance of all
 * trials, their size from the distances of the kept ones, so that no normal law is assumed.
 * Source: JCGM 102:2011, 7.7 (sizes; for a normal vector 2.448 and, unrelated, 2.236).
 */
export function regionOf(plane: PlaneMoments, x: Float64Array, y: Float64Array): Region {
  const per = 1 / Math.max(1, plane.count - 1);
  const [varX, varY, cov] = [plane.xx * per, plane.yy * per, plane.xy * per];
  const turnRad = 0.5 * angleOf(2 * cov, varX - varY);
  const [c, s] = [cosineOf(turnRad), sineOf(turnRad)];
  const along = Math.sqrt(Math.max(0, c * c * varX + 2 * c * s * cov + s * s * varY));
  const across = Math.sqrt(Math.max(0, s * s * varX - 2 * c * s * cov + c * c * varY));
  const [sdX, sdY] = [Math.sqrt(varX), Math.sqrt(varY)];
  const round = new Float64Array(x.length);
  const square = new Float64Array(x.length);
  // A direction in which nothing varies, to rounding, puts no trial farther out.
  const least = 1e-9 * along;
  const inSds = (off: number, sd: number): number => (sd > least ? off / sd : 0);
  for (let i = 0; i < x.length; i++) {
    const [a, b] = [x[i]! - plane.meanX, y[i]! - plane.meanY];
    const u = inSds(c * a + s * b, along);
    const v = inSds(c * b - s * a, across);
    round[i] = Math.sqrt(u * u + v * v);
    square[i] = Math.max(Math.abs(inSds(a, sdX)), Math.abs(inSds(b, sdY)));
  }
  const rank = Math.max(0, Math.ceil(SHARE * x.length) - 1);
  const [kp, kq] = [round, square].map((distances) => distances.sort()[rank] ?? 0) as [
    number,
    number,
  ];
  return {
    ellipse: { kp, alongMm: kp * along, acrossMm: kp * across, turnRad },
    rectangle: { kq, halfXMm: kq * sdX, halfYMm: kq * sdY },
  };
}

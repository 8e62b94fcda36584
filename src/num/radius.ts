import { angleOf, cosineOf, expOf, hypotenuse, sineOf } from './elementary.ts';
import { normalShareBelow } from './textbook.ts';

/** A normal vector in the plane: mean and covariance. */
export interface PlaneNormal {
  readonly meanX: number;
  readonly meanY: number;
  readonly varX: number;
  readonly varY: number;
  readonly cov: number;
}

const STEPS = 240;

/**
 * Chance that a normal vector is no longer than `radius`, by integrating its larger principal axis
 * (Simpson, 240 steps over 8 sd) with the other in closed form; good to about 1e-7.
 */
export function chanceWithinRadius(vector: PlaneNormal, radius: number): number {
  if (radius <= 0) return 0;
  const { m1, m2, s1, s2 } = principal(vector);
  if (s1 === 0) return hypotenuse(m1, m2) <= radius ? 1 : 0;
  const low = Math.max(-radius, m1 - 8 * s1);
  const high = Math.min(radius, m1 + 8 * s1);
  if (low >= high) return 0;
  // u = middle + half sin(t) smooths the ends, where the chord's length has a vertical tangent.
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  let sum = 0;
  for (let k = 0; k <= STEPS; k++) {
    const t = -Math.PI / 2 + (Math.PI * k) / STEPS;
    const u = middle + half * sineOf(t);
    const chord = Math.sqrt(Math.max(0, radius * radius - u * u));
    const held =
      s2 < 1e-9 * s1
        ? Number(Math.abs(m2) <= chord)
        : normalShareBelow((chord - m2) / s2) - normalShareBelow((-chord - m2) / s2);
    const z = (u - m1) / s1;
    const density = expOf((-z * z) / 2) / (s1 * Math.sqrt(2 * Math.PI));
    const weight = k === 0 || k === STEPS ? 1 : k % 2 === 1 ? 4 : 2;
    sum += weight * held * density * half * cosineOf(t);
  }
  return Math.min(1, (sum * Math.PI) / STEPS / 3);
}

/** Mean and standard deviation of a normal vector's length; never linearised (JCGM 102:2011, 9.3). */
export function radiusMoments(vector: PlaneNormal): { readonly mean: number; readonly sd: number } {
  const { meanX, meanY, varX, varY } = vector;
  const square = meanX * meanX + meanY * meanY + varX + varY;
  const { s1 } = principal(vector);
  if (s1 === 0) return { mean: hypotenuse(meanX, meanY), sd: 0 };
  const off = hypotenuse(meanX, meanY);
  const low = Math.max(0, off - 8 * s1);
  const top = off + 8 * s1;
  let sum = 0;
  for (let k = 0; k <= STEPS; k++) {
    const weight = k === 0 || k === STEPS ? 1 : k % 2 === 1 ? 4 : 2;
    sum += weight * (1 - chanceWithinRadius(vector, low + ((top - low) * k) / STEPS));
  }
  const mean = low + (sum * (top - low)) / STEPS / 3;
  return { mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) };
}

/** The length below which a share `p` of a normal vector lies. */
export function radiusQuantile(vector: PlaneNormal, p: number): number {
  const { s1 } = principal(vector);
  let low = 0;
  let high = hypotenuse(vector.meanX, vector.meanY) + 10 * s1;
  for (let step = 0; step < 30; step++) {
    const middle = (low + high) / 2;
    if (chanceWithinRadius(vector, middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Means and standard deviations along the principal axes, the larger first. */
function principal(vector: PlaneNormal): {
  readonly m1: number;
  readonly m2: number;
  readonly s1: number;
  readonly s2: number;
} {
  const { meanX, meanY, varX, varY, cov } = vector;
  const turn = 0.5 * angleOf(2 * cov, varX - varY);
  const [c, s] = [cosineOf(turn), sineOf(turn)];
  const along = c * c * varX + 2 * c * s * cov + s * s * varY;
  const across = s * s * varX - 2 * c * s * cov + c * c * varY;
  return {
    m1: c * meanX + s * meanY,
    m2: -s * meanX + c * meanY,
    s1: Math.sqrt(Math.max(0, along)),
    s2: Math.sqrt(Math.max(0, across)),
  };
}

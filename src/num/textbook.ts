import jstat from 'jstat';
import { betaQuantile } from './shares-below.ts';

/**
 * Textbook distributions: from jstat, and this is the only file that speaks to it, but for those on which draws
 * and predictions rest.
 */

export { normalShareBelow, studentQuantile } from './shares-below.ts';

/** Share of Student's t of `dof` degrees of freedom that lies below `t`. */
export function studentShareBelow(t: number, dof: number): number {
  return jstat.studentt.cdf(t, dof);
}

/** Chi-square below which a share `p` lies, for `dof` degrees of freedom. */
export function chiSquareQuantile(p: number, dof: number): number {
  return jstat.chisquare.inv(p, dof);
}

/** Share of chi-square of `dof` degrees of freedom that lies below `value`. */
export function chiSquareShareBelow(value: number, dof: number): number {
  return jstat.chisquare.cdf(value, dof);
}

/**
 * Two-sided interval for a chance of which `good` of `count` trials came out good.
 * Source: C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404-413.
 */
export function chanceInterval(
  good: number,
  count: number,
  confidence: number,
): readonly [number, number] {
  const tail = (1 - confidence) / 2;
  const low = good === 0 ? 0 : betaQuantile(tail, good, count - good + 1);
  const high = good === count ? 1 : betaQuantile(1 - tail, good + 1, count - good);
  return [low, high];
}

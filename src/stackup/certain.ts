import { chanceOf } from './chance.ts';
import { digitsOf } from './digits.ts';
import type { Totals } from './totals.ts';
import { LEAST_BLOCKS } from './plan.ts';

/** Which numbers there are: without a mean or a standard deviation (JCGM 101:2008, 6.4.9) the ends alone. */
export type MomentsKnown = 'known' | 'no sd' | 'no mean';

/**
 * The fewest certain digits among all numbers that are reported, 0 before ten blocks: mean, standard
 * deviation and interval ends count in digits of the standard deviation, a chance in those of its smaller
 * side. Source: JCGM 101:2008, 7.9.4.
 */
export function digitsReached(
  totals: Totals,
  figureCount: number,
  questionCount: number,
  moments: MomentsKnown,
): number {
  if (totals.blocks() < LEAST_BLOCKS) return 0;
  let least = Infinity;
  for (let f = 0; f < figureCount; f++) {
    const { u, mean, sd, low, high } = totals.sure(f);
    const numbers = moments === 'known' ? [mean, sd, low, high] : [low, high];
    for (const sure of numbers) least = Math.min(least, digitsOf(u, sure));
  }
  // Counted in betas, so only when the cheaper numbers are there.
  for (let q = 0; q < questionCount && least > 0; q++) {
    least = Math.min(least, chanceOf(totals.good[q]!, totals.trials()).chanceDigits);
  }
  return least;
}

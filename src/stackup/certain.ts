import type { Source } from '../sources/source.ts';
import { chanceOf } from './chance.ts';
import { digitsOf, RARE, toleranceOf } from './digits.ts';
import { LEAST_BLOCKS } from './plan.ts';
import type { Totals } from './totals.ts';

/** Which numbers there are: without a mean or a standard deviation (JCGM 101:2008, 6.4.9) the ends alone. */
export type MomentsKnown = 'known' | 'no sd' | 'no mean';

/** How far the numbers that are reported have come. */
export interface Reached {
  /** The fewest certain digits among them, 0 before ten blocks. */
  readonly digits: number;
  /** How many times more trials the least sure of them is likely to want for the digits asked. */
  readonly timesMore: number;
}

/**
 * Mean, standard deviation and interval ends count in digits of the standard deviation, a chance in those
 * of its smaller side. Source: JCGM 101:2008, 7.9.4, with 99 % half-widths in place of two standard errors.
 */
export function reachedBy(totals: Totals, moments: MomentsKnown, digitsAsked: number): Reached {
  let digits = totals.blocks() < LEAST_BLOCKS ? 0 : Infinity;
  let worst = LEAST_BLOCKS / Math.max(1, totals.blocks());
  const note = (size: number, sure: number): void => {
    digits = Math.min(digits, digitsOf(size, sure));
    const tolerance = toleranceOf(size, digitsAsked);
    if (sure > tolerance) worst = Math.max(worst, (sure / tolerance) ** 2);
  };
  for (let f = 0; f < totals.figureCount; f++) {
    const { u, mean, sd, low, high } = totals.sure(f);
    for (const sure of moments === 'known' ? [mean, sd, low, high] : [low, high]) note(u, sure);
  }
  for (let q = 0; q < totals.questionCount; q++) {
    const chance = chanceOf(totals.good[q]!, totals.trials());
    digits = Math.min(digits, chance.chanceDigits);
    if (chance.chanceDigits < digitsAsked) {
      const small = Math.max(RARE, Math.min(chance.chance, 1 - chance.chance));
      worst = Math.max(worst, (chance.chanceSure / toleranceOf(small, digitsAsked)) ** 2);
    }
  }
  return { digits, timesMore: worst };
}

/** What the fewest readings among the sources leave to be told. */
export function momentsKnown(sources: readonly Source[]): MomentsKnown {
  const dofs = sources.flatMap(({ distribution }) =>
    distribution.kind === 'scaled-t' ? [distribution.dof] : [],
  );
  const fewest = Math.min(Infinity, ...dofs);
  return fewest > 2 ? 'known' : fewest > 1 ? 'no sd' : 'no mean';
}

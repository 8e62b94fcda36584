import { describe, expect, it } from 'vitest';
import type { StopsJob } from '../../src/job/job.ts';
import { predictedGain, seenGain } from './dialled-laws.ts';
import { someJob } from './recovery-laws.ts';

const SHOPS = 400;
const WITHIN_MM = 0.05;
/** Four standard errors of a share over the shops, and of a mean of squares of two normal figures. */
const FOUR_SE = 4 * Math.sqrt(0.25 / SHOPS);
const FOUR_SE_OF_SQUARE = 4 * Math.sqrt(2 / SHOPS);

const same = someJob() as StopsJob;
const opposite: StopsJob = {
  ...same,
  stops: { ...same.stops, corner: { frontUp: 'near-left', backUp: 'near-right' } },
};

describe('the gain of dialling in that is predicted is the gain seen in simulated shops', () => {
  it.each([
    ['same corner, blanks of many lengths, one turn', same, 1, false],
    ['same corner, blanks of many lengths, three turns', same, 3, false],
    ['same corner, each blank calipered, three turns', same, 3, true],
    ['opposite corner, one turn', opposite, 1, false],
    ['opposite corner, five turns', opposite, 5, false],
  ] as const)('%s', (_name, job, turns, isCalipered) => {
    const seen = seenGain(job, { turns, isCalipered }, SHOPS, WITHIN_MM);
    const predicted = predictedGain(job, { turns, isCalipered }, WITHIN_MM);
    for (const key of ['plain', 'dialled'] as const)
      expect(Math.abs(seen[key] / predicted[key] - 1), key).toBeLessThan(FOUR_SE_OF_SQUARE);
    for (const key of ['goodPlain', 'goodDialled'] as const)
      expect(Math.abs(seen[key] - predicted[key]), key).toBeLessThan(FOUR_SE);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectLawfulStops } from './laws.ts';
import { someJobs } from './some-jobs.ts';

describe('stops of any kind', () => {
  it('are closed, have their walls, and touch exactly where the placings say', async () => {
    let pieces = 0;
    await fc.assert(
      fc.asyncProperty(someJobs, async (job) => {
        pieces += (await expectLawfulStops(job)).length;
      }),
      { seed: 30, numRuns: 10 },
    );
    expect(pieces).toBeGreaterThan(11);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solidAgreement, thicknessAgreement } from './solid-model/agreement.ts';
import { holeSetUp } from './solid-model/hole-set-ups.ts';
import { thickJob } from './solid-model/thick-jobs.ts';
import { setUp } from './second-model/set-ups.ts';

describe('a solid with leaning edges on upright stops', () => {
  it.each([
    ['1200 set-ups', setUp, 25, 1200],
    ['500 set-ups with a zero in a hole', holeSetUp, 26, 500],
  ] as const)('is cut where the production model says, on %s', (_name, setUps, seed, numRuns) => {
    fc.assert(
      fc.property(setUps, (one) => {
        const { apartMm, allowedMm } = solidAgreement(one);
        expect(apartMm).toBeLessThan(allowedMm);
      }),
      { seed, numRuns },
    );
  });
});

describe('a solid on an uneven bed', () => {
  it('is cut as deep as the production model says, and leaves the same webs and V grooves, on 1000 jobs', () => {
    fc.assert(
      fc.property(thickJob, (one) => {
        for (const { apartMm, allowedMm } of thicknessAgreement(one))
          expect(apartMm).toBeLessThan(allowedMm);
      }),
      { seed: 27, numRuns: 1000 },
    );
  });
});

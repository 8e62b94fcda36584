import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solidAgreement, thicknessAgreement } from './solid-model/agreement.ts';
import { holeSetUp } from './solid-model/hole-set-ups.ts';
import { thickJob } from './solid-model/thick-jobs.ts';
import { setUp } from './second-model/set-ups.ts';

describe('a solid with leaning edges on upright stops', () => {
  it('is cut where the production model says, on 20 set-ups with everything off at once', () => {
    fc.assert(
      fc.property(setUp, (one) => {
        const { apartMm, allowedMm } = solidAgreement(one);
        expect(apartMm).toBeLessThan(allowedMm);
      }),
      { seed: 21, numRuns: 20 },
    );
  });

  it('that is zeroed in a hole of the first placing as well, on 20', () => {
    fc.assert(
      fc.property(holeSetUp, (one) => {
        const { apartMm, allowedMm } = solidAgreement(one);
        expect(apartMm).toBeLessThan(allowedMm);
      }),
      { seed: 24, numRuns: 20 },
    );
  });
});

describe('a solid on an uneven bed', () => {
  it('is cut as deep as the production model says, and leaves the same webs and V grooves, on 10 jobs', () => {
    fc.assert(
      fc.property(thickJob, (one) => {
        for (const { apartMm, allowedMm } of thicknessAgreement(one))
          expect(apartMm).toBeLessThan(allowedMm);
      }),
      { seed: 23, numRuns: 10 },
    );
  });
});

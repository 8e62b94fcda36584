import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { agreementOn } from './second-model/agreement.ts';
import { setUp } from './second-model/set-ups.ts';

describe('a second model of the turn-over', () => {
  it('lands every cut where the production model does, on 3000 set-ups with everything off at once', () => {
    fc.assert(
      fc.property(setUp, (one) => {
        const { apartMm, allowedMm, unaskedMm } = agreementOn(one);
        expect(apartMm).toBeLessThan(allowedMm);
        expect(unaskedMm).toBe(0);
      }),
      { seed: 13, numRuns: 3000 },
    );
  });
});

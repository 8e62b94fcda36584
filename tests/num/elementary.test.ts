import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expOf, logOf, sineOf } from '../../src/num/elementary.ts';

describe('our own logarithm, exponential and sine', () => {
  it('agree with the engine to three units in the last place', () => {
    const ulps = 3 * 2 ** -52;
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1e12, noNaN: true }), (x) => {
        expect(Math.abs(logOf(x) - Math.log(x))).toBeLessThanOrEqual(ulps * Math.abs(Math.log(x)));
      }),
      { seed: 1, numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (x) => {
        expect(Math.abs(expOf(x) - Math.exp(x))).toBeLessThanOrEqual(ulps * Math.exp(x));
      }),
      { seed: 2, numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.double({ min: -Math.PI / 2, max: Math.PI / 2, noNaN: true }), (x) => {
        expect(Math.abs(sineOf(x) - Math.sin(x))).toBeLessThanOrEqual(ulps);
      }),
      { seed: 3, numRuns: 500 },
    );
    expect([logOf(1), expOf(0), sineOf(0)]).toEqual([0, 1, 0]);
  });
});

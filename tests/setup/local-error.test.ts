// Derived: a cut at x is off by e(x) - e(where the zero was touched); turned about Y with a kept zero, the back is cut
// at W - x, so back minus front is 2 e(0) - e(x) - e(W - x).
import { describe, expect, it } from 'vitest';
import { FLAT6, plainJob, spread } from './plain-job.ts';
import { keysOf, misalign } from './misalign.ts';

const plain = plainJob();
/** The corner stands 70 from the bed's own, so with a place every 70 it is the first of them. */
const withLocal = (changes: Parameters<typeof plainJob>[0] = {}) =>
  plainJob({
    shop: {
      ...plain.shop,
      machine: {
        ...plain.shop.machine,
        local: { spread: spread({ kind: 'rectangular', low: -1, high: 1 }), overMm: 70 },
      },
    },
    ...changes,
  });
const D = 0.01;

describe('the error of an axis along its travel', () => {
  const job = withLocal();
  const at = { x: 140, y: 0 };

  it('is felt at the place of the cut, and where the zero was touched', () => {
    expect(misalign(job, { 'local-error/x/3': D }, at)[0]).toBeCloseTo(-2 * D, 12);
    expect(misalign(job, { 'local-error/x/1': D }, at)[0]).toBeCloseTo(2 * D, 12);
    expect(misalign(job, { 'local-error/x/3': D, 'local-error/x/1': D }, at)[0]).toBeCloseTo(0, 12);
  });

  it('is as large between two places as at them', () => {
    // Half-way each has a share of 1 / sqrt 2, so that two independent draws scatter as one. The front is cut half-way
    // between the third and fourth place, the back between the second and third.
    const half = D / Math.SQRT2;
    const middle = { x: 175, y: 0 };
    expect(misalign(job, { 'local-error/x/3': D }, middle)[0]).toBeCloseTo(-2 * half, 12);
    expect(misalign(job, { 'local-error/x/4': D }, middle)[0]).toBeCloseTo(-half, 12);
    expect(misalign(job, { 'local-error/x/2': D }, middle)[0]).toBeCloseTo(-half, 12);
  });

  it('moves a second side stop that is milled in place', () => {
    const milled = withLocal({
      stops: {
        ...plain.stops,
        corner: { frontUp: 'near-left', backUp: 'near-right' },
        made: { kind: 'milled-in-place', cutter: FLAT6 },
      },
      zero: {
        frontUp: { ...plain.zero.frontUp, xy: { kind: 'milled-stops', at: null } },
        backUp: plain.zero.backUp,
      },
    });
    // The stop at 280 is off by e, and with it the blank; what is cut at 140 is not.
    expect(misalign(milled, { 'local-error/x/5': D }, at)[0]).toBeCloseTo(D, 12);
  });

  it('is not asked for where nobody stated one', () => {
    expect(keysOf(plain).filter((key) => key.startsWith('local'))).toEqual([]);
  });
});

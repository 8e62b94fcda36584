import { describe, expect, it } from 'vitest';
import type { StopsJob } from '../../src/job/job.ts';
import { atNominal } from '../../src/measure/dial-in.ts';
import { predictedGain } from './dialled-laws.ts';
import { someJob } from './recovery-laws.ts';

const same = someJob() as StopsJob;
const opposite: StopsJob = {
  ...same,
  stops: { ...same.stops, corner: { frontUp: 'near-left', backUp: 'near-right' } },
};

describe('offsets dialled in', () => {
  it('take away what stays, so that one turn leaves two placings and the reading', () => {
    const { plain, dialled } = predictedGain(opposite, { turns: 1, isCalipered: false }, 0.05, 4);
    expect(plain).toBeGreaterThan(0.03);
    expect(dialled).toBeLessThan(plain / 20);
    const many = predictedGain(opposite, { turns: 9, isCalipered: false }, 0.05, 4).dialled;
    expect(many).toBeLessThan(0.75 * dialled);
  });

  it('bring in the length of the test piece, unless it and every blank are calipered', () => {
    // Lengths are within 0.3 either way: a variance of 0.03 for the next blank, and as much for the test piece.
    const loose = predictedGain(same, { turns: 3, isCalipered: false }, 0.05, 4).dialled;
    // Four standard errors over 4096 trials.
    expect(Math.abs(loose / 0.0615 - 1)).toBeLessThan(4 * Math.sqrt(2 / 4096));
    const calipered = predictedGain(same, { turns: 3, isCalipered: true }, 0.05, 4).dialled;
    expect(calipered).toBeLessThan(0.002);
  });

  it('are given for a blank of nominal length when the piece was calipered', () => {
    const offset = {
      axis: 'x' as const,
      estimate: { value: 0.5, sd: 0.03, dof: Infinity },
      readingSd: 0.03,
      nextHalf95: 0.1,
      calipered: null,
    };
    // 0.3 too long at a factor of 1: that much of the offset was the piece's own.
    const told = atNominal(offset, { factor: 1, nominalMm: 280 }, { mm: 280.3, sd: 0.04 });
    expect(told.estimate.value).toBeCloseTo(0.2, 12);
    expect(told.estimate.sd).toBeCloseTo(0.05, 12);
    expect(told.readingSd).toBeCloseTo(0.05, 12);
    expect(told.calipered).toBe(0.04);
  });
});

import { describe, expect, it } from 'vitest';
import { recovered } from './recovery-laws.ts';

const SHOPS = 300;
const share = (flags: readonly boolean[]): number => flags.filter(Boolean).length / flags.length;
/** Four standard errors of a share of 0.95 over the shops. */
const FOUR_SE = 4 * Math.sqrt((0.95 * 0.05) / SHOPS);

describe('hundreds of simulated shops', () => {
  it.each([3, 5])('are found out by %d turns over, with intervals that hold as stated', (turns) => {
    const all = Array.from({ length: SHOPS }, (_, k) => recovered(7000 + k, turns));
    const figures = {
      lean: share(all.map(({ leanHeld }) => leanHeld)),
      shift: share(all.map(({ shiftHeld }) => shiftHeld)),
      next: share(all.flatMap(({ promisedHeld }) => promisedHeld)),
    };
    // An interval may hold more often than it says (the gauge's sd is its floor), never less.
    for (const held of Object.values(figures)) expect(held).toBeGreaterThan(0.95 - FOUR_SE);
    // Off by t with at least two degrees of freedom: few beyond four of its sd, none absurd.
    expect(share(all.map(({ leanOff }) => Math.abs(leanOff) < 4))).toBeGreaterThan(0.97);
    const mean = all.reduce((sum, { leanOff }) => sum + leanOff, 0) / SHOPS;
    expect(Math.abs(mean)).toBeLessThan(0.35);
  });

  it('are the better for dialling in, by what was promised', () => {
    const all = Array.from({ length: SHOPS }, (_, k) => recovered(17000 + k, 3));
    const mean = (values: readonly number[]): number =>
      values.reduce((sum, one) => sum + one, 0) / values.length;
    const before = mean(all.flatMap((one) => one.before));
    const after = mean(all.flatMap((one) => one.after));
    expect(after).toBeLessThan(0.4 * before);
    const gain =
      mean(all.map((one) => one.seenSquare)) / mean(all.map((one) => one.promisedSquare));
    // A mean of squares over the shops; the gauge's sd as a floor makes promises a little too careful.
    expect(gain).toBeGreaterThan(0.7);
    expect(gain).toBeLessThan(1.3);
  });
});

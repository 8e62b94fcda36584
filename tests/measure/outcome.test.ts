import { describe, expect, it } from 'vitest';
import { meanHalf95, outcomeOf, type Expected } from '../../src/measure/outcome.ts';
import { luckOf } from './shop-beds.ts';

const BOTH: Expected = {
  mean: 61,
  sd: 0.06,
  low: 60.5,
  high: 61.5,
  chance: 0.999,
  staysShare: 0.5,
};
const parts = (values: readonly number[]) => values.map((value, k) => ({ order: k + 1, value }));

/** A batch as it was predicted: what stays is drawn once, the rest for each part. */
function batch(seed: number, count: number, expected: Expected, more = 1): readonly number[] {
  const luck = luckOf(seed);
  const stays = luck.normal(expected.sd * Math.sqrt(expected.staysShare));
  return Array.from(
    { length: count },
    () =>
      expected.mean + stays + more * luck.normal(expected.sd * Math.sqrt(1 - expected.staysShare)),
  );
}

describe('finished parts against the prediction', () => {
  it('are as predicted when they are, but for the luck that is stated', () => {
    const batches = 500;
    const wrong = Array.from(
      { length: batches },
      (_, k) => outcomeOf(BOTH, parts(batch(k, 5, BOTH)), 0).verdict.kind,
    ).filter((kind) => kind !== 'as predicted').length;
    expect(wrong / batches).toBeLessThan(0.05 + 4 * Math.sqrt((0.05 * 0.95) / batches));
    expect(wrong / batches).toBeGreaterThan(0.005);
  });

  it('are worse when they scatter or stand off more, better when less', () => {
    const kinds = (more: number) =>
      Array.from(
        { length: 60 },
        (_, k) => outcomeOf(BOTH, parts(batch(k, 8, BOTH, more)), 0).verdict,
      );
    expect(
      kinds(3).filter(({ kind, by }) => kind === 'worse' && by === 'scatter').length,
    ).toBeGreaterThan(50);
    expect(kinds(0.1).filter(({ kind }) => kind === 'better').length).toBeGreaterThan(50);
    const off = outcomeOf(BOTH, parts([61.25, 61.2, 61.22]), 0).verdict;
    expect(off).toMatchObject({ kind: 'worse', by: 'middle' });
    expect(off.sure).toBeGreaterThan(0.99);
    const web: Expected = { ...BOTH, mean: 2.9, low: 2.5, high: null };
    expect(outcomeOf(web, parts([3.2, 3.21, 3.15]), 0).verdict.kind).toBe('better');
    expect(outcomeOf(web, parts([2.6, 2.61, 2.55]), 0).verdict.kind).toBe('worse');
  });

  it('by t: two parts give no more than two can', () => {
    // Source: GUM table G.2, t 95 %: 12.71 for one degree of freedom, 4.30 for two.
    const two = outcomeOf(BOTH, parts([61, 61.02]), 0);
    expect(meanHalf95(two)).toBeCloseTo(12.706 * 0.01, 3);
    const three = outcomeOf(BOTH, parts([61, 61.02, 61.04]), 0);
    expect(meanHalf95(three)).toBeCloseTo((4.303 * 0.02) / Math.sqrt(3), 4);
    // Chi-square 2.5 % for 2 degrees: 0.0506, so the true sd may be 6.3 times what three parts show.
    expect(three.sd!.high / three.sd!.value).toBeCloseTo(Math.sqrt(2 / 0.0506356), 2);
    expect(meanHalf95(outcomeOf(BOTH, parts([61]), 0.01))).toBe(Infinity);
    expect(outcomeOf(BOTH, parts([61]), 0.01).sd).toBeNull();
    // Clopper-Pearson, 3 good of 3: 1 - (0.025)^(1/3) bad at most, closed form.
    expect(three.goodShare95[0]).toBeCloseTo(0.025 ** (1 / 3), 6);
  });

  it('drift when they go one way, and not before four', () => {
    expect(outcomeOf(BOTH, parts([61, 61.01, 61.02]), 0).drift).toBeNull();
    const going = outcomeOf(BOTH, parts([61, 61.021, 61.039, 61.06, 61.081]), 0).drift!;
    expect(going.perPart.value).toBeCloseTo(0.02, 3);
    expect(going.sure).toBeGreaterThan(0.999);
    const still = Array.from(
      { length: 400 },
      (_, k) => outcomeOf(BOTH, parts(batch(5000 + k, 6, BOTH)), 0).drift!.sure,
    ).filter((sure) => sure > 0.95).length;
    expect(Math.abs(still / 400 - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / 400));
  });
});

import { describe, expect, it } from 'vitest';
import type { Job, Recurrence, Spread } from '../../src/job/job.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { predict } from '../../src/stackup/predict.ts';
import type { NeedPrediction, RecurrenceKey } from '../../src/stackup/prediction.ts';
import { plainJob, spread } from '../setup/plain-job.ts';
import { shopJob } from '../setup/shop-job.ts';

const N = 10_000;

function predicted(job: Job, trials = N): readonly NeedPrediction[] {
  const misfit = misfitModel(job);
  return predict(job.name, misfit, sourcesOf(job, misfit.deviations), { seed: 1, trials }).needs;
}

const NEEDS: Job['needs'] = [
  { kind: 'misalignment', name: 'corner', at: { x: 70, y: 120 }, withinMm: 0.25 },
];
const pm = (half: number, recurs: Recurrence): Spread => ({
  ...spread({ kind: 'rectangular', low: -half, high: half }),
  recurs,
});
const plain = plainJob({ needs: NEEDS });
const withWidth = (widthSpread: Spread): Job => ({
  ...plain,
  blank: { ...plain.blank, widthSpread },
});

describe('a prediction', () => {
  it('of a blank whose length alone is off says what can be said by hand', () => {
    // At one corner the misfit is the error of the length itself: its size is rectangular on 0..0.4, so
    // mean 0.2, sd 0.4 / sqrt 12, 62.5 % within 0.25, worst 0.4 (derived).
    const [need] = predicted(withWidth(pm(0.4, 'part')));
    const sd = 0.4 / Math.sqrt(12);
    expect(Math.abs(need!.mean - 0.2)).toBeLessThan((4 * sd) / Math.sqrt(N));
    expect(Math.abs(need!.sd - sd)).toBeLessThan(4 * sd * Math.sqrt(0.8 / (4 * N)));
    expect(Math.abs(need!.chance - 0.625)).toBeLessThan(4 * need!.chanceSe);
    expect(need!.chance95[0]).toBeLessThan(need!.chance);
    expect(need!.chance95[1]).toBeGreaterThan(need!.chance);
    expect(need!.worst[1]).toBeCloseTo(0.4, 9);
    expect(need!.worstLinear[1]).toBeCloseTo(0.4, 5);
    expect(need!.interval95[1]).toBeCloseTo(0.39, 2);
    expect(need!.shares).toEqual([
      {
        source: 'blank width',
        share: expect.closeTo(1, 1) as number,
        se: expect.any(Number) as number,
        first: expect.closeTo(1, 1) as number,
        firstSe: expect.any(Number) as number,
        bad: { share: expect.closeTo(1, 0) as number, se: expect.any(Number) as number },
      },
    ]);
    expect(need).toMatchObject({
      shape: 'radial',
      x: { sd: expect.closeTo(0.8 / Math.sqrt(12), 2) as number },
      y: { sd: 0 },
    });
  });

  it('of a true set-up is nothing, all over', () => {
    const [need] = predicted(plain);
    expect(need).toMatchObject({
      mean: 0,
      sd: 0,
      interval95: [0, 0],
      worst: [0, 0],
      chance: 1,
      shares: [],
    });
  });

  it('gives rounding no causes', () => {
    const zero: Job['zero'] = {
      frontUp: {
        ...plain.zero.frontUp,
        xy: {
          kind: 'middle',
          at: null,
          tool: { name: 'pin', spread: spread({ kind: 'exactly', value: 0 }) },
        },
      },
      backUp: {
        ...plain.zero.backUp,
        xy: {
          kind: 'middle',
          at: null,
          tool: { name: 'pin', spread: spread({ kind: 'exactly', value: 0 }) },
        },
      },
    };
    const [need] = predicted({ ...withWidth(pm(0.4, 'part')), zero });
    expect(need!.worst[1]).toBeLessThan(1e-9);
    expect(need!.shares.map(({ share }) => share)).toEqual([0]);
  });

  it.each<[RecurrenceKey, Recurrence]>([
    ['shop', 'shop'],
    ['powerUp', 'power-up'],
    ['setup', 'setup'],
    ['part', 'part'],
    ['placing', 'placing'],
    ['feature', 'feature'],
  ])('counts a source under how it recurs: %s', (key, recurs) => {
    const [need] = predicted(withWidth(pm(0.4, recurs)));
    for (const [other, share] of Object.entries(need!.recurring!))
      expect(share).toBeCloseTo(other === key ? 1 : 0, 1);
  });

  it('agrees with first order where contacts do not switch, and not where they do', () => {
    // A normal zero error, kept: the misfit is the straight sum (-2 ex, 0).
    const touch = spread({ kind: 'normal', mean: 0, sd: 0.05 });
    const straight: Job['zero'] = {
      ...plain.zero,
      frontUp: {
        ...plain.zero.frontUp,
        xy: { kind: 'stops', at: null, tool: { name: 'paper', spread: touch } },
      },
    };
    expect(predicted({ ...plain, zero: straight })[0]!.firstOrder.agrees).toBe(true);
    // Out of square under an arm: one-sided, abs(alpha) (s1 - s0); a straight line through 0 sees nothing.
    const arm: Job = {
      ...plain,
      stops: { ...plain.stops, sideTouch: { kind: 'arm', fromMm: 20, toMm: 160 } },
      blank: { ...plain.blank, squareSpread: pm(0.0015, 'part') },
    };
    const [need] = predicted(arm);
    expect(need!.firstOrder.agrees).toBe(false);
    expect(need!.firstOrder.chance).toBeGreaterThan(need!.chance - 1e-9);
    expect(need!.firstOrder.sd).toBeLessThan(0.1 * need!.sd);
    expect(need!.mean).toBeGreaterThan(0.08);
  });

  it('of too few readings tells interval and chance only', () => {
    const few = (dof: number): Job =>
      withWidth(spread({ kind: 'scaled-t', mean: 0, scale: 0.05, dof }));
    expect(predicted(few(4))[0]!.moments).toBe('known');
    expect(predicted(few(2))[0]).toMatchObject({ moments: 'no sd', shares: [] });
    expect(predicted(few(1))[0]).toMatchObject({ moments: 'no mean', shares: [] });
    expect(predicted(few(2))[0]!.chance).toBeGreaterThan(0.5);
  });

  it('widening a spread never narrows the interval, and nothing spread has no share', () => {
    const ends = [0.1, 0.2, 0.4].map(
      (half) => predicted(withWidth(pm(half, 'part')))[0]!.interval95[1],
    );
    expect(ends[0]).toBeLessThan(ends[1]!);
    expect(ends[1]).toBeLessThan(ends[2]!);
    const names = predicted(shopJob())[0]!.shares.map(({ source }) => source);
    expect(names).not.toContain('movement Z');
    expect(
      predicted(
        shopJob((job) => ({
          hold: { ...job.hold, clampDrag: spread({ kind: 'exactly', value: 0 }) },
        })),
      )[0]!.shares.map(({ source }) => source),
    ).not.toContain('clamp drag');
    expect(names).toContain('clamp drag');
  });
});

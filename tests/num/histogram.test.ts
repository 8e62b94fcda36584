import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BINS,
  binRangeOf,
  countInto,
  quantileOfBins,
  shortestOfBins,
  type BinRange,
  type Counted,
} from '../../src/num/histogram.ts';
import { normalQuantile } from '../../src/num/normal-quantile.ts';
import { momentsOfSome, joinMoments, noMoments, sdOfMoments } from '../../src/num/moments.ts';
import { shortestInterval, symmetricInterval } from './sorted.ts';

function counted(values: Float64Array): { readonly range: BinRange; readonly counted: Counted } {
  const range = binRangeOf(values.slice(0, Math.min(1024, values.length)));
  const bins = new Uint16Array(BINS);
  countInto(bins, 0, range, values, values.length);
  const sorted = values.slice().sort();
  return {
    range,
    counted: {
      bins,
      at: 0,
      count: values.length,
      least: sorted[0]!,
      greatest: sorted[sorted.length - 1]!,
    },
  };
}

/** Shares in a scrambled but even order, so that a look at the first thousand is a fair one. */
const shares = (n: number): Float64Array =>
  Float64Array.from({ length: n }, (_, k) => (((k * 7919) % n) + 0.5) / n);

describe('counts in bins', () => {
  it.each<readonly [string, (p: number) => number]>([
    ['normal', normalQuantile],
    ['one-sided', (p) => -Math.log(p)],
    ['rectangular', (p) => 60 + 1e-9 * p],
    ['heavy-tailed', (p) => Math.tan(Math.PI * (p - 0.5))],
    ['mostly one value', (p) => Math.max(0, p - 0.9)],
  ])('give the ends of %s trials to a bin', (_name, quantile) => {
    const values = shares(10_007).map(quantile);
    const { range, counted: all } = counted(values);
    const sorted = values.slice().sort();
    const [low, high] = symmetricInterval(sorted, 0.95);
    // Ranks between trials are a matter of taste: two trials to either side, and a bin.
    const near = (end: number): number => {
      const rank = sorted.indexOf(end);
      const [from, to] = [Math.max(0, rank - 2), Math.min(sorted.length - 1, rank + 2)];
      return range.width + sorted[to]! - sorted[from]!;
    };
    expect(Math.abs(quantileOfBins(all, range, 0.025) - low)).toBeLessThan(near(low));
    expect(Math.abs(quantileOfBins(all, range, 0.975) - high)).toBeLessThan(near(high));
    const [from, to] = shortestOfBins(all, range, 0.95);
    const [exactFrom, exactTo] = shortestInterval(sorted, 0.95);
    expect(Math.abs(to - from - (exactTo - exactFrom))).toBeLessThan(
      range.width + near(exactFrom) + near(exactTo),
    );
  });

  it('give a constant exactly', () => {
    const { range, counted: all } = counted(new Float64Array(500).fill(61.3));
    expect(quantileOfBins(all, range, 0.025)).toBe(61.3);
    expect(shortestOfBins(all, range, 0.95)).toEqual([61.3, 61.3]);
  });

  it('lose no trial that falls outside the range of the first look', () => {
    const range = binRangeOf(Float64Array.of(0, 1));
    const bins = new Uint16Array(BINS);
    countInto(bins, 0, range, Float64Array.of(-50, 0.5, 50, Infinity), 4);
    expect([bins[0], bins[BINS - 1], bins.reduce((sum, n) => sum + n, 0)]).toEqual([1, 2, 4]);
  });
});

describe('moments', () => {
  it('joined from groups are those of the whole', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 3, maxLength: 60 }),
        fc.integer({ min: 1, max: 59 }),
        (values, at) => {
          const cut = Math.min(at, values.length - 1);
          const joined = noMoments();
          for (const part of [values.slice(0, cut), values.slice(cut)])
            joinMoments(joined, momentsOfSome(Float64Array.from(part), part.length));
          const whole = momentsOfSome(Float64Array.from(values), values.length);
          // 60 terms of up to 1e3, squares up to 1e6: rounding below 1e-9 of them.
          expect(Math.abs(joined.mean - whole.mean)).toBeLessThan(1e-11);
          expect(Math.abs(joined.squares - whole.squares)).toBeLessThan(1e-7);
          expect(sdOfMoments(joined)).toBeCloseTo(sdOfMoments(whole), 6);
        },
      ),
      { seed: 5, numRuns: 100 },
    );
  });
});

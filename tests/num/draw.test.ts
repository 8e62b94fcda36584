import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Distribution } from '../../src/num/distribution.ts';
import { fillDraws, quantileOf } from '../../src/num/draw.ts';
import { normalQuantile } from '../../src/num/normal-quantile.ts';
import { limitsOf, meanOf, sdOf } from '../../src/num/spread-of.ts';
import { fillWords } from '../../src/num/stream.ts';
import { momentsOf } from './sorted.ts';
import { chanceInterval, normalShareBelow, studentQuantile } from '../../src/num/textbook.ts';

const EACH: readonly Distribution[] = [
  { kind: 'rectangular', low: -0.4, high: 0.4 },
  { kind: 'rectangular', low: 0, high: 0.2 },
  { kind: 'triangular', low: -1, high: 3 },
  { kind: 'arcsine', low: -0.1, high: 0.1 },
  { kind: 'normal', mean: 0.3, sd: 0.05 },
  { kind: 'half-normal', sigma: 0.03 },
  { kind: 'either', low: -0.03, high: 0.03 },
  { kind: 'scaled-t', mean: 1, scale: 0.2, dof: 9 },
];

describe('draws', () => {
  it.each(EACH)(
    'have the mean and standard deviation of $kind (four standard errors)',
    (distribution) => {
      // Moments: JCGM 101:2008 table 1 and 6.4 (through tests/reference/uncertainty.md 1.5, from memory there).
      const n = 200_000;
      const draws = new Float64Array(n);
      const words = new Int32Array(n);
      fillWords(3, 9, 0, 1, words, n);
      fillDraws(distribution, words, draws, 0, n);
      const { mean, sd } = momentsOf(draws);
      expect(Math.abs(mean - meanOf(distribution))).toBeLessThan((4 * sd) / Math.sqrt(n));
      // The sd of an sd is below sd * sqrt((kurtosis - 1) / 4 n), kurtosis below 6 for all of these.
      expect(Math.abs(sd - sdOf(distribution))).toBeLessThan(4 * sd * Math.sqrt(5 / (4 * n)));
    },
  );

  it('rise with the share below them, and stay within the limits of a bounded one', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...EACH),
        fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }),
        fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }),
        (distribution, p, q) => {
          const quantile = quantileOf(distribution);
          const [low, high] = [quantile(Math.min(p, q)), quantile(Math.max(p, q))];
          expect(low).toBeLessThanOrEqual(high);
          const bounded = !['normal', 'half-normal', 'scaled-t'].includes(distribution.kind);
          if (bounded) {
            const [least, most] = limitsOf(distribution);
            expect(low).toBeGreaterThanOrEqual(least - 1e-15);
            expect(high).toBeLessThanOrEqual(most + 1e-15);
          }
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });

  it('agree with the exact quantile: to 2e-12 sd of a normal one, and rise with the word', () => {
    // Edges of octaves and segments, both ends, the middle, and words between.
    const edges = [0, 1, 15, 16, 17, 31, 32, 0x7fffffff, 0x80000000, 0xffffffff, 0xffffffef];
    const some = Array.from({ length: 20_000 }, (_, k) => Math.imul(k, 0x9e3779b1) >>> 0);
    const octaves = Array.from({ length: 27 }, (_, k) => [2 ** (k + 4) - 1, 2 ** (k + 4)]).flat();
    const all = [...edges, ...some, ...octaves, ...octaves.map((word) => ~word >>> 0)];
    const words = Int32Array.from([...new Set(all)].sort((a, b) => a - b));
    const drawn = (distribution: Distribution): Float64Array => {
      const draws = new Float64Array(words.length);
      fillDraws(distribution, words, draws, 0, words.length);
      return draws;
    };
    for (const distribution of EACH) {
      const quantile = quantileOf(distribution);
      const scale = sdOf(distribution);
      const draws = drawn(distribution);
      draws.forEach((draw, i) => {
        const exact = quantile((words[i]! >>> 0) * 2 ** -32 + 2 ** -33);
        // The t is steep in its tails, so relative to the draw there.
        if (!(Math.abs(draw - exact) < 2e-12 * (scale + 4 * Math.abs(exact))))
          expect.soft(draw, `${distribution.kind}, word ${words[i]!}`).toBe(exact);
        // At the flat ends of an arcsine neighbours may differ by the last bit.
        if (i > 0 && !(draw >= draws[i - 1]! - 1e-15 * scale))
          expect.soft(draw).toBeGreaterThan(draws[i - 1]!);
      });
    }
  });

  it('finds normal deviates to the last digits', () => {
    // Source: standard normal table values to 15 digits (Abramowitz and Stegun 26.2, recomputed).
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 14);
    expect(normalQuantile(0.95)).toBeCloseTo(1.6448536269514722, 14);
    expect(normalQuantile(1e-10)).toBeCloseTo(-6.361340902404056, 12);
    expect(normalQuantile(0.5)).toBe(0);
  });

  it('finds Student deviates as the table does, by way of the normal ones', () => {
    // Source: GUM table G.2 / NIST TN 1297 table B.1, 95 % column (two-sided): 4.30, 2.57, 2.23, 2.12.
    for (const [dof, t] of [
      [2, 4.3],
      [5, 2.57],
      [10, 2.23],
      [16, 2.12],
    ] as const) {
      expect(quantileOf({ kind: 'scaled-t', mean: 0, scale: 1, dof })(0.975)).toBeCloseTo(t, 2);
    }
    for (const p of [1e-6, 0.01, 0.3, 0.4999, 0.5, 0.7, 0.999]) {
      const drawn = quantileOf({ kind: 'scaled-t', mean: 0, scale: 1, dof: 4 })(p);
      expect(drawn).toBeCloseTo(p === 0.5 ? 0 : studentQuantile(p, 4), 4);
    }
  });

  it('agrees with the textbook normal distribution', () => {
    for (const p of [0.001, 0.1, 0.4, 0.5, 0.9, 0.9999]) {
      expect(normalShareBelow(normalQuantile(p))).toBeCloseTo(p, 12);
    }
  });

  it('bounds a chance of none or all', () => {
    // Source: the rule of three, 3/n for 95 % one-sided; two-sided 1 - 0.025^(1/n) exactly (Clopper and Pearson).
    expect(chanceInterval(0, 100, 0.95)[1]).toBeCloseTo(1 - 0.025 ** (1 / 100), 9);
    expect(chanceInterval(100, 100, 0.95)[0]).toBeCloseTo(0.025 ** (1 / 100), 9);
  });
});

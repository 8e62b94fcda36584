// Our own normal, Student and beta against jstat, where jstat can be trusted, and against closed forms.
import fc from 'fast-check';
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { fillDraws } from '../../src/num/draw.ts';
import {
  betaQuantile,
  logGamma,
  normalShareBelow,
  studentQuantile,
} from '../../src/num/shares-below.ts';
import { studentShareBelow } from '../../src/num/textbook.ts';

describe('the normal share', () => {
  it('is jstat’s, to 1e-8 of it where that has digits', () => {
    for (let z = -5; z <= 5; z += 0.07)
      expect(Math.abs(normalShareBelow(z) / jstat.normal.cdf(z, 0, 1) - 1)).toBeLessThan(1e-8);
  });

  it('keeps its digits in the far tail', () => {
    // Asymptotic series of Mills' ratio, whose error is below its next term, 105 / z^8: 6e-9 at 20.
    const tail = (z: number): number =>
      (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / z) *
      (1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6);
    for (const z of [20, 30, 37])
      expect(Math.abs(normalShareBelow(-z) / tail(z) - 1)).toBeLessThan(105 / z ** 8 + 1e-13);
    expect([normalShareBelow(0), normalShareBelow(-Infinity), normalShareBelow(60)]).toEqual([
      0.5, 0, 1,
    ]);
  });

  it('joins where one form gives way to the other', () => {
    expect(Math.abs(normalShareBelow(-2.5) - normalShareBelow(-2.5 - 1e-13))).toBeLessThan(1e-14);
  });
});

describe('Student’s quantile', () => {
  it('has the closed forms of 1 and 2 degrees of freedom, far out too', () => {
    for (const p of [1e-9, 0.001, 0.2, 0.4, 0.6, 0.975, 0.9999]) {
      // Cauchy: -cot(pi p); two degrees: (2 p - 1) / sqrt(2 p (1 - p)).
      expect(Math.abs(studentQuantile(p, 1) * Math.tan(Math.PI * p) + 1)).toBeLessThan(1e-11);
      const two = (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
      expect(Math.abs(studentQuantile(p, 2) / two - 1)).toBeLessThan(1e-11);
    }
    expect(studentQuantile(0.5, 7)).toBe(0);
  });

  it('leaves its share below it, whole degrees of freedom or not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 1 - 1e-4, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (p, dof) => {
          expect(Math.abs(studentShareBelow(studentQuantile(p, dof), dof) - p)).toBeLessThan(1e-7);
        },
      ),
      { seed: 3, numRuns: 100 },
    );
  });

  it('goes over into the normal’s', () => {
    expect(Math.abs(normalShareBelow(studentQuantile(0.9, 1e7)) - 0.9)).toBeLessThan(1e-7);
  });
});

describe('the beta quantile', () => {
  it('has the closed forms of a = 1 or b = 1', () => {
    for (const p of [1e-6, 0.005, 0.4, 0.5, 0.8, 0.995])
      for (const n of [1, 10, 1e4]) {
        // Shares below x: 1 - (1 - x)^n, and x^n. -log(1 - x) is kept by log1p.
        expect(Math.abs(Math.log1p(-betaQuantile(p, 1, n)) * n - Math.log1p(-p))).toBeLessThan(
          1e-11 * n,
        );
        expect(Math.abs(n * Math.log(betaQuantile(p, n, 1)) - Math.log(p))).toBeLessThan(1e-11 * n);
      }
  });

  it('is jstat’s, for few trials and for ten million', () => {
    for (const [p, good, all] of [
      [0.005, 3, 10],
      [0.975, 70, 100],
      [0.005, 990_000, 1_000_000],
      [0.995, 9_900_000, 10_000_000],
    ] as const) {
      const theirs = jstat.beta.inv(p, good, all - good + 1);
      expect(Math.abs(betaQuantile(p, good, all - good + 1) - theirs)).toBeLessThan(1e-7);
    }
  });
});

it('the gamma function is that of factorials and of a half', () => {
  expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 14);
  expect(logGamma(6)).toBeCloseTo(Math.log(120), 14);
  expect(logGamma(18)).toBeCloseTo(
    Array.from({ length: 17 }, (_, k) => Math.log(k + 1)).reduce((sum, one) => sum + one, 0),
    12,
  );
});

it('a draw from readings is the quantile of its word, to the table’s 1e-6', () => {
  const draws = new Float64Array(1);
  for (const dof of [1, 2, 5, 9, 40])
    for (const word of [3, 1e5, 1e8, 1e9, 2e9, 4e9]) {
      fillDraws({ kind: 'scaled-t', mean: 0, scale: 1, dof }, Int32Array.of(word | 0), draws, 0, 1);
      const exact = studentQuantile((word + 0.5) / 2 ** 32, dof);
      expect(Math.abs(draws[0]! / exact - 1)).toBeLessThan(2e-6);
    }
});

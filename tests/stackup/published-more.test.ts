// Further published examples and tables through the engine. Inputs, exact values and how sure we are of each:
// tests/reference/uncertainty.md, by the numbers of its sections.
import { describe, expect, it } from 'vitest';
import type { Distribution } from '../../src/num/distribution.ts';
import { normalQuantile } from '../../src/num/normal-quantile.ts';
import { straightOf, straightVector } from '../../src/stackup/first-order.ts';
import type { Model } from '../../src/stackup/model.ts';
import { varianceShares } from '../../src/stackup/shares.ts';
import { modelOfFunction, normal, rectangular, scaledT, tried } from './a-model.ts';

const M = 40_960;

const firstOrder = (model: Model): { readonly mean: number; readonly sd: number } => {
  const { meanX, varX } = straightVector(model, straightOf(model), 0, 0);
  return { mean: meanX, sd: Math.sqrt(varX) };
};

/** Both to half of the last printed digit, the trials to four standard errors more. */
function expectBoth(model: Model, y: number, u: number, digitY: number, digitU: number): void {
  const line = firstOrder(model);
  expect(Math.abs(line.mean - y)).toBeLessThan(0.51 * digitY);
  expect(Math.abs(line.sd - u)).toBeLessThan(0.51 * digitU);
  const { mean, sd } = tried(model, M).figure(0);
  expect(Math.abs(mean - y)).toBeLessThan(0.51 * digitY + (4 * u) / Math.sqrt(M));
  expect(Math.abs(sd - u)).toBeLessThan(0.51 * digitU + 4 * u * Math.sqrt(2 / (4 * M)));
}

describe('JCGM GUM-5:2026, examples (4; second-hand there, recomputed)', () => {
  it('glucose, 12 H + 6 C + 6 O: 180.1557 (0.0038)', () => {
    const model = modelOfFunction(
      [normal(1.00798, 8e-5), normal(12.0106, 5.8e-4), normal(15.9994, 2.1e-4)],
      ([h, c, o]) => [12 * h! + 6 * c! + 6 * o!],
    );
    // The masses' own rounding leaves 12 x 5e-6 + 6 x 5e-5 + 6 x 5e-5: the sum of these inputs is 180.15576.
    expectBoth(model, 180.1557, 0.0038, 2e-4, 1e-4);
  });

  it('pH between two buffers: 7.0002 (0.0041)', () => {
    const model = modelOfFunction(
      [
        normal(-1.875, 0.025),
        normal(6.15, 0.0289),
        normal(-26.35, 0.0289),
        normal(6.864, 0.0051),
        normal(7.4157, 0.0051),
      ],
      ([e, e1, e2, ph1, ph2]) => [ph1! + ((ph2! - ph1!) * (e! - e1!)) / (e2! - e1!)],
    );
    expectBoth(model, 7.0002, 0.0041, 1e-4, 1e-4);
  });

  it('resistance thermometer, its equation solved, three inputs related: 20.0232 (0.0045)', () => {
    const sds = [0.0005, 2.7e-6, 1.1e-7];
    const [ab, ac, bc] = [-0.155, 0.092, -0.959];
    // Cholesky of the correlations.
    const l22 = Math.sqrt(1 - ab * ab);
    const l32 = (bc - ab * ac) / l22;
    const l33 = Math.sqrt(1 - ac * ac - l32 * l32);
    const unit = normal(0, 1);
    const model = modelOfFunction(
      [unit, unit, unit, normal(99.99947, 0.0001), normal(1.0780057, 5e-6)],
      ([p, q, r, rs, w]) => {
        const r0 = 99.9961 + sds[0]! * p!;
        const a = 0.0039096 + sds[1]! * (ab * p! + l22 * q!);
        const b = -6e-7 + sds[2]! * (ac * p! + l32 * q! + l33 * r!);
        // R0 (1 + a t + b t^2) = W RS: the root near 20.
        const c = 1 - (w! * rs!) / r0;
        return [(-2 * c) / (a + Math.sqrt(a * a - 4 * b * c))];
      },
    );
    expectBoth(model, 20.0232, 0.0045, 1e-4, 1e-4);
  });

  it('decay over 2.73 with a half-life of 32.9 (1.4): 10.810 (0.054)', () => {
    const model = modelOfFunction([normal(11.45, 0.05), normal(32.9, 1.4)], ([a0, life]) => [
      a0! * 2 ** (-2.73 / life!),
    ]);
    expectBoth(model, 10.81, 0.054, 1e-3, 1e-3);
  });

  it('wire rope, six readings and four even spreads: 10005.7, u 9.9, 95 % within 19.4', () => {
    const readings = [10006, 10007, 10005, 10008, 10003, 10005];
    const mean = readings.reduce((sum, one) => sum + one, 0) / 6;
    const s = Math.sqrt(readings.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 5);
    const halves = [6.8, 8.2, 8.7, 10.2].map((half) => rectangular(-half, half));
    const sum = (x: readonly number[]): number[] => [x.reduce((all, one) => all + one, 0)];
    // The GUM takes the mean's own uncertainty as s / sqrt(n).
    const model = modelOfFunction([normal(mean, s / Math.sqrt(6)), ...halves], sum);
    expectBoth(model, 10005.7, 9.9, 0.1, 0.1);
    // 19.4 is a normal's 1.96 u: even spreads end sooner, so the trials' interval is within it.
    expect(1.96 * firstOrder(model).sd).toBeCloseTo(19.4, 1);
    // JCGM 101 takes a scaled t of 5 degrees for the readings instead: the same interval to 0.5.
    const drawn = modelOfFunction([scaledT(mean, s / Math.sqrt(6), 5), ...halves], sum);
    const [low, high] = tried(drawn, M).figure(0).interval95;
    expect((high - low) / 2).toBeLessThan(19.4);
    expect((high - low) / 2).toBeGreaterThan(18.5);
  });
});

describe("Sobol's g (5)", () => {
  // V_i = 1 / (3 (1 + a_i)^2), S_i = V_i / V, ST_i = V_i prod_{j != i} (1 + V_j) / V.
  it.each([
    [
      [0, 0.5, 3, 9, 99, 99],
      [0.5867812, 0.2607916, 0.0366738, 0.0058678, 5.86781e-5, 5.86781e-5],
      [0.6900859, 0.3561734, 0.0563335, 0.0091706, 9.20084e-5, 9.20084e-5],
    ],
    [
      [0, 0, 0],
      [0.2432432, 0.2432432, 0.2432432],
      [0.4324324, 0.4324324, 0.4324324],
    ],
  ])('a = %j', (a, firsts, totals) => {
    const model = modelOfFunction(
      a.map(() => rectangular(0, 1)),
      (x) => [
        x.reduce((product, one, k) => (product * (Math.abs(4 * one - 2) + a[k]!)) / (1 + a[k]!), 1),
      ],
    );
    const batches = 32;
    const [found] = varianceShares(
      model,
      a.map((_, k) => [k]),
      a.length,
      [{ kind: 'column', at: 0 }],
      1,
      batches,
    );
    // The variance that all are divided by is itself known to about 2 / sqrt(2 n) of it.
    const byVariance = 2 / Math.sqrt(2 * batches * 1024);
    a.forEach((_, k) => {
      const { share, se, first, firstSe } = found!.groups[k]!;
      expect(Math.abs(share - totals[k]!)).toBeLessThan(
        4 * Math.hypot(se, totals[k]! * byVariance),
      );
      expect(Math.abs(first - firsts[k]!)).toBeLessThan(
        4 * Math.hypot(firstSe, firsts[k]! * byVariance),
      );
    });
    expect(found!.sum).toBeGreaterThan(1);
  });
});

describe('stacks (6)', () => {
  it('product of two measured sizes (Ku 1966 by NIST, Goodman 1960): 4.517743 and exactly 4.518141', () => {
    const model = modelOfFunction([normal(20, 0.3), normal(7, 0.2)], ([x, z]) => [x! * z!]);
    expect(firstOrder(model).sd).toBeCloseTo(4.517742799, 6);
    const { mean, sd } = tried(model, M).figure(0);
    const exact = Math.sqrt((7 * 0.3) ** 2 + (20 * 0.2) ** 2 + (0.3 * 0.2) ** 2);
    expect(exact).toBeCloseTo(4.5181412107, 9);
    expect(Math.abs(mean - 140)).toBeLessThan((4 * exact) / Math.sqrt(M));
    expect(Math.abs(sd - exact)).toBeLessThan(4 * exact * Math.sqrt(2.1 / (4 * M)));
  });

  // EA-4/02 S10: k = (1 - sqrt((1 - p)(1 - B^2))) / sqrt((1 + B^2) / 6), B the top over the base of a trapezoid.
  it.each([
    [0, 1.9017671853],
    [1 / 3, 1.8338920592],
    [0.33, 1.8351099708],
    [0.5, 1.7666261613],
  ])('95 % factor of a trapezoid, B = %d', (top, k) => {
    expect(formOf(top)).toBeCloseTo(k, 9);
    const [low, high] = trapezoid(top).interval95;
    expect(Math.abs((high - low) / 2 / SD(top) - k)).toBeLessThan(4 * halfSe(top) + 0.002);
  });

  it('95 % factor of B = 0.95: the form’s 1.6519 is past where it holds, and 1.6450 is true', () => {
    expect(formOf(0.95)).toBeCloseTo(1.6518846955, 9);
    // It holds while the interval ends on the slope: B <= p / (2 - p) = 0.905. On the top 2 x / (1 + B) = p (derived).
    const true95 = (0.95 * 1.95) / 2 / SD(0.95);
    const [low, high] = trapezoid(0.95).interval95;
    expect(true95).toBeCloseTo(1.645, 3);
    expect(Math.abs((high - low) / 2 / SD(0.95) - true95)).toBeLessThan(4 * halfSe(0.95) + 0.002);
  });

  const SD = (top: number): number => Math.sqrt((1 + top * top) / 6);
  const formOf = (top: number): number => (1 - Math.sqrt(0.05 * (1 - top * top))) / SD(top);
  /** Half-widths (1 + B) / 2 and (1 - B) / 2 make a trapezoid of half-width 1 with a top of half-width B. */
  const trapezoid = (top: number): { readonly interval95: readonly [number, number] } => {
    const even = (half: number): Distribution => rectangular(-half, half);
    const model = modelOfFunction([even((1 + top) / 2), even((1 - top) / 2)], ([x, y]) => [
      x! + y!,
    ]);
    return tried(model, M).figure(0);
  };
  /** Standard error of half the interval's width, in sds: of two nearly independent ends, by the density there. */
  const halfSe = (top: number): number => {
    const density = Math.min(Math.sqrt(0.05 / (1 - top * top)), 1 / (1 + top));
    return Math.sqrt((0.025 * 0.975) / M) / density / Math.SQRT2 / SD(top);
  };
});

describe('one-sided figures (8)', () => {
  it.each([
    [0, 0.7978845608, 0.602810275],
    [0.5, 0.8955931148, 0.6692630071],
    [1, 1.1666309412, 0.7993573963],
    [2, 2.0169814052, 0.9652906355],
    [3, 3.0007643086, 0.9977041465],
  ])('size of a normal value about %d', (mu, mean, sd) => {
    const model = modelOfFunction([normal(mu, 1)], ([x]) => [Math.abs(x!)]);
    const found = tried(model, M).figure(0);
    expect(Math.abs(found.mean - mean)).toBeLessThan((4 * sd) / Math.sqrt(M));
    // Kurtosis of a half-normal 3.87.
    expect(Math.abs(found.sd - sd)).toBeLessThan(4 * sd * Math.sqrt(2.9 / (4 * M)));
  });

  it('a half-normal’s median is 0.674490, its 95 % point 1.959964', () => {
    expect(normalQuantile(0.75)).toBeCloseTo(0.67448975, 8);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963985, 9);
  });
});

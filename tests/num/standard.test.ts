// NIST StRD, Rayleigh, Rice and circles that hold a share: what our summaries and integrals must give. Of Michelso,
// Mavro, Lew and Lottery (univariate) and Filip (linear) tests/reference/uncertainty.md 7 has the certified values and
// not the data, so they are not tested; nor is any lag-1 correlation, which nothing here works out.
import { describe, expect, it } from 'vitest';
import { chanceWithinRadius, radiusMoments, radiusQuantile } from '../../src/num/radius.ts';
import { momentsOf } from './sorted.ts';

const round = (sdX: number, sdY: number, meanX = 0) => ({
  meanX,
  meanY: 0,
  varX: sdX ** 2,
  varY: sdY ** 2,
  cov: 0,
});

describe('NIST StRD, univariate', () => {
  // Data as NIST describes them: 1.2 (or an offset more) once, then 1.1 and 1.3 alternating 500 times.
  it.each([
    ['NumAcc2', 1, 1e-14],
    ['NumAcc3', 1_000_000, 1e-9],
    // The input's own rounding (1e-9) leaves no more than 1e-8 of 0.1.
    ['NumAcc4', 10_000_000, 1e-8],
  ] as const)('%s: mean and standard deviation', (_name, offset, relative) => {
    const values = Float64Array.from(
      { length: 1001 },
      (_, k) => offset + (k === 0 ? 0.2 : k % 2 === 1 ? 0.1 : 0.3),
    );
    const { mean, sd } = momentsOf(values);
    expect(Math.abs(mean / (offset + 0.2) - 1)).toBeLessThan(1e-14);
    expect(Math.abs(sd / 0.1 - 1)).toBeLessThan(relative * 10);
  });

  it('NumAcc1: mean 10000002, sd 1', () => {
    expect(momentsOf(Float64Array.of(10_000_001, 10_000_003, 10_000_002))).toEqual({
      mean: 10_000_002,
      sd: 1,
    });
  });
});

describe('lengths of normal vectors (tests/reference/uncertainty.md 8)', () => {
  it('are Rayleigh’s: quantiles, mean, sd', () => {
    for (const [p, r] of [
      [0.25, 0.758528],
      [0.5, 1.17741],
      [0.9, 2.145966],
      [0.95, 2.447747],
      [0.99, 3.034854],
      [0.999, 3.716922],
    ] as const)
      expect(radiusQuantile(round(1, 1), p)).toBeCloseTo(r, 5);
    expect(radiusMoments(round(1, 1)).mean).toBeCloseTo(1.253314, 5);
    expect(radiusMoments(round(1, 1)).sd).toBeCloseTo(0.655136, 5);
  });

  it('are Rice’s', () => {
    for (const [nu, mean, sd] of [
      [0.1, 1.256445, 0.656768],
      [3, 3.172577, 0.966826],
      [10, 10.050127, 0.997471],
    ] as const) {
      const found = radiusMoments(round(1, 1, nu));
      expect(found.mean).toBeCloseTo(mean, 4);
      expect(found.sd).toBeCloseTo(sd, 4);
    }
    // 50 and 95 % points.
    for (const [nu, half, most] of [
      [0.5, 1.25158, 2.591661],
      [2, 2.245802, 3.826253],
    ] as const) {
      expect(radiusQuantile(round(1, 1, nu), 0.5)).toBeCloseTo(half, 5);
      expect(radiusQuantile(round(1, 1, nu), 0.95)).toBeCloseTo(most, 5);
    }
  });

  it('lie within circles as the table says (Harter’s kind; computed independently)', () => {
    const table = [
      [0, 0.67449, 1.64485, 1.95996, 2.57583],
      [0.3, 0.74994, 1.67383, 1.9842, 2.59421],
      [0.5, 0.87042, 1.73708, 2.03586, 2.63257],
      [0.8, 1.05769, 1.94716, 2.23029, 2.79069],
      [1, 1.17741, 2.14597, 2.44775, 3.03485],
      [0.1, 0.68199, 1.64791, 1.96253, 2.57778],
      [0.2, 0.70585, 1.65731, 1.97041, 2.58377],
      [0.4, 0.80785, 1.69918, 2.00514, 2.60995],
      [0.6, 0.93365, 1.79152, 2.0813, 2.66533],
      [0.7, 0.99621, 1.86253, 2.14598, 2.71505],
      [0.9, 1.11807, 2.04236, 2.3318, 2.89743],
    ] as const;
    for (const [c, ...radii] of table)
      radii.forEach((r, k) => {
        expect(chanceWithinRadius(round(1, c), r)).toBeCloseTo([0.5, 0.9, 0.95, 0.99][k]!, 5);
      });
  });

  it('have half their shots within about 0.562 + 0.615 c (from memory, within 0.35 % for c from 0.4)', () => {
    for (const c of [0.4, 0.6, 0.8, 1])
      expect(Math.abs(radiusQuantile(round(1, c), 0.5) / (0.562 + 0.615 * c) - 1)).toBeLessThan(
        0.0036,
      );
  });
});

import { describe, expect, it } from 'vitest';
import { momentsOf, shortestInterval, symmetricInterval } from './sorted.ts';
import { toleranceOf } from '../../src/stackup/digits.ts';

describe('summaries', () => {
  it('gives the certified moments of ill-conditioned data', () => {
    // Source: NIST StRD univariate, NumAcc1 (mean 10000002, sd 1), NumAcc3 (1000000.2, 0.1), NumAcc4
    // (10000000.2, 0.1; in doubles good to about 1e-8, by the rounding of the input itself).
    expect(momentsOf(Float64Array.of(10000001, 10000003, 10000002))).toEqual({
      mean: 10000002,
      sd: 1,
    });
    const alternating = (base: number): Float64Array =>
      Float64Array.from(
        { length: 1001 },
        (_, i) => base + (i === 0 ? 0.2 : i % 2 === 1 ? 0.1 : 0.3),
      );
    const three = momentsOf(alternating(1_000_000));
    expect(three.mean).toBeCloseTo(1000000.2, 8);
    expect(three.sd).toBeCloseTo(0.1, 9);
    expect(momentsOf(alternating(10_000_000)).sd).toBeCloseTo(0.1, 7);
  });

  it('takes ranks as the standard says', () => {
    // Source: JCGM 101:2008, 7.7: M = 100, p = 0.95: q = 95, r = (100 - 95 + 1) / 2 = 3, so [y(3), y(98)].
    const sorted = Float64Array.from({ length: 100 }, (_, i) => i + 1);
    expect(symmetricInterval(sorted, 0.95)).toEqual([3, 98]);
    const skewed = Float64Array.from({ length: 100 }, (_, i) => (i + 1) ** 2);
    expect(shortestInterval(skewed, 0.95)).toEqual([1, 96 ** 2]);
  });

  it('knows how sure a number must be', () => {
    // Source: JCGM 101:2008, 7.9.2 and its examples (through tests/reference/uncertainty.md 1.7).
    expect(toleranceOf(0.00035, 2)).toBeCloseTo(5e-6, 12);
    expect(toleranceOf(0.00035, 1)).toBeCloseTo(5e-5, 12);
    expect(toleranceOf(2, 1)).toBeCloseTo(0.5, 12);
    expect(toleranceOf(0.0754, 2)).toBeCloseTo(5e-4, 12);
    expect(toleranceOf(0.0754, 1)).toBeCloseTo(5e-3, 12);
    expect(toleranceOf(0.0996, 1)).toBeCloseTo(0.05, 12);
  });
});

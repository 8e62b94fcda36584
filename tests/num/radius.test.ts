import { describe, expect, it } from 'vitest';
import { chanceWithinRadius, radiusMoments, radiusQuantile } from '../../src/num/radius.ts';

const round = (sx: number, sy: number, meanX = 0): Parameters<typeof radiusMoments>[0] => ({
  meanX,
  meanY: 0,
  varX: sx * sx,
  varY: sy * sy,
  cov: 0,
});

describe('the length of a normal vector', () => {
  it('has the quantiles of Rayleigh', () => {
    // Source: tests/reference/uncertainty.md 8 (closed form sqrt(-2 ln(1 - p))).
    for (const [p, r] of [
      [0.25, 0.758528],
      [0.5, 1.17741],
      [0.95, 2.447747],
      [0.99, 3.034854],
    ] as const) {
      expect(radiusQuantile(round(1, 1), p)).toBeCloseTo(r, 5);
    }
  });

  it('has the mean and sd of Rice', () => {
    // Source: tests/reference/uncertainty.md 8, nu / sigma = .5, 1, 2, 5 (computed independently there).
    for (const [nu, mean, sd] of [
      [0.5, 1.330447, 0.692755],
      [1, 1.548572, 0.775837],
      [2, 2.272383, 0.91448],
      [5, 5.10107, 0.989489],
    ] as const) {
      const found = radiusMoments(round(1, 1, nu));
      expect(found.mean).toBeCloseTo(mean, 4);
      expect(found.sd).toBeCloseTo(sd, 4);
    }
  });

  it('holds shares of unequal errors within circles as the table does', () => {
    // Source: tests/reference/uncertainty.md 8, circle table, sigma 1 and c (computed independently there).
    for (const [c, p, r] of [
      [0, 0.95, 1.95996],
      [0.3, 0.5, 0.74994],
      [0.5, 0.95, 2.03586],
      [0.8, 0.99, 2.79069],
      [1, 0.9, 2.14597],
    ] as const) {
      expect(radiusQuantile(round(1, c), p)).toBeCloseTo(r, 4);
      expect(radiusQuantile(round(c, 1), p)).toBeCloseTo(r, 4);
    }
  });

  it('does not linearise near zero', () => {
    // Source: JCGM 102:2011, 9.3, x1 = 0.001 and 0.010, u = 0.010 (exact moments, tests/reference/uncertainty.md 2).
    const near = radiusMoments(round(0.01, 0.01, 0.001));
    expect(near.mean).toBeCloseTo(0.0125645, 6);
    expect(near.sd).toBeCloseTo(0.0065677, 6);
    const off = radiusMoments(round(0.01, 0.01, 0.01));
    expect(off.mean).toBeCloseTo(0.0154857, 6);
    expect(off.sd).toBeCloseTo(0.0077584, 6);
  });

  it('answers for vectors with no spread', () => {
    expect(chanceWithinRadius(round(0, 0, 3), 2)).toBe(0);
    expect(chanceWithinRadius(round(0, 0, 3), 4)).toBe(1);
    expect(chanceWithinRadius(round(1, 1), 0)).toBe(0);
    expect(radiusMoments(round(0, 0, 3))).toEqual({ mean: 3, sd: 0 });
  });
});

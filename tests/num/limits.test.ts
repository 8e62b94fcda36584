import { describe, expect, it } from 'vitest';
import type { Distribution } from '../../src/num/distribution.ts';
import { limitsOf } from '../../src/num/spread-of.ts';

describe('limits for the worst case', () => {
  // Source: the model's rule 12: an unbounded spread is taken to 3 sd, a half-normal to 3 of its parent's
  // sigma, a t to its 99.7 % point; t(0.9985) for 9 degrees of freedom is 4.0 (Student tables: 99.7 % two-sided, 3.96 to 4.0).
  it.each<[Distribution, number, number]>([
    [{ kind: 'exactly', value: 0.1 }, 0.1, 0.1],
    [{ kind: 'rectangular', low: -0.2, high: 0.4 }, -0.2, 0.4],
    [{ kind: 'triangular', low: -1, high: 1 }, -1, 1],
    [{ kind: 'arcsine', low: -1, high: 1 }, -1, 1],
    [{ kind: 'either', low: -0.03, high: 0.03 }, -0.03, 0.03],
    [{ kind: 'normal', mean: 1, sd: 0.1 }, 0.7, 1.3],
    [{ kind: 'half-normal', sigma: 0.1 }, 0, 0.3],
  ])('of %j', (distribution, low, high) => {
    const [least, most] = limitsOf(distribution);
    expect(least).toBeCloseTo(low, 12);
    expect(most).toBeCloseTo(high, 12);
  });

  it('of readings reach farther than 3 sd', () => {
    const [least, most] = limitsOf({ kind: 'scaled-t', mean: 2, scale: 1, dof: 9 });
    expect(most - 2).toBeGreaterThan(3.9);
    expect(most - 2).toBeLessThan(4.1);
    expect(least).toBeCloseTo(4 - most, 9);
  });
});

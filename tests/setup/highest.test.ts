// Where a hill with one top is highest, against tops known in closed form.
import { describe, expect, it } from 'vitest';
import { highest } from '../../src/setup/highest.ts';

describe('the highest place of a hill', () => {
  it.each([
    [
      'two straight sides',
      (x: number) => Math.min(3 + 50 * (x - 0.0007), 3 - 20 * (x - 0.0007)),
      0.0007,
      1e-13,
      25,
    ],
    ['a round top', (x: number) => 3 - 50 * (x - 0.0003) ** 2, 0.0003, 1e-8, 60],
    ['its top at an end', (x: number) => 3 + 5 * x, 0.001, 0, 25],
    [
      'sides that are convex',
      (x: number) => 40 * x * x - 3 * Math.abs(x - 0.0002),
      0.0002,
      1e-13,
      30,
    ],
    ['nothing beyond a place', (x: number) => (x > 0.0009 ? -Infinity : 2 * x), 0.0009, 1e-12, 60],
  ] as const)('is found with %s', (_, hill, top, offBy, looks) => {
    let looked = 0;
    const found = highest(
      (x) => {
        looked += 1;
        return hill(x);
      },
      -0.001,
      0.001,
    );
    expect(Math.abs(found - top)).toBeLessThanOrEqual(offBy);
    expect(looked).toBeLessThanOrEqual(looks + 5);
  });
});

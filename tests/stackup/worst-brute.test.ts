// The search for the worst case against all corners of small random models, and closed forms (derived here).
import { describe, expect, it } from 'vitest';
import { straightOf } from '../../src/stackup/first-order.ts';
import { atOnce } from '../../src/stackup/steps.ts';
import { cornerFigure, cornerRadius, worstFigure } from '../../src/stackup/worst.ts';
import { modelOfFunction, rectangular } from './a-model.ts';
import { corners, dot, expectReachesCorners, switching } from './worst-laws.ts';

describe('the worst case', () => {
  it.each([3, 4, 5, 6, 7, 8, 9].map((inputs, seed) => [seed, inputs] as const))(
    'reaches every corner of model %d of %d inputs',
    expectReachesCorners,
  );

  it('is never more than the truth: it was met within the limits', () => {
    // Convex in every input alone, so no place between is above the best corner.
    const model = switching(3, 6);
    const convex = modelOfFunction(
      model.inputs.map(({ distribution }) => distribution),
      (x) => [Math.max(dot([1, -2, 0.5, 1, 1, -1], x), dot([-1, 1, 1, 2, -1, 0.1], x))],
    );
    const [, high] = corners(convex, ([first]) => first!);
    expect(atOnce(worstFigure(convex, straightOf(convex), 0))[1]).toBe(high);
  });

  it('needs two inputs to change at once where one alone only loses', () => {
    // From (-1, -1): either alone falls to -1, both together rise to 1.5 (derived).
    const model = modelOfFunction(
      [rectangular(-1, 1), rectangular(-1, 1), rectangular(-1, 1)],
      ([x, y, z]) => [x! * y! + 0.25 * (x! + y!) + 0.1 * z!],
    );
    const most = atOnce(worstFigure(model, straightOf(model), 0))[1];
    expect(most).toBeCloseTo(1.6, 12);
  });

  it('lies between the limits to 1e-12, if that is where it is', () => {
    // Least 0 at (0.3, -0.7) (closed form); the last halving is 2^-26 of 2, and its square.
    const model = modelOfFunction([rectangular(-1, 1), rectangular(-1, 1)], ([x, y]) => [
      (x! - 0.3) ** 2 + 2 * (y! + 0.7) ** 2,
    ]);
    const [least, most] = atOnce(worstFigure(model, straightOf(model), 0));
    expect(least).toBeGreaterThanOrEqual(0);
    expect(least).toBeLessThan(3 * (2 * 2 ** -26) ** 2);
    expect(most).toBeCloseTo(1.3 ** 2 + 2 * 1.7 ** 2, 12);
  });

  it('without a search looks at the corners of the straight model, and no farther', () => {
    const straight = modelOfFunction(
      [rectangular(-1, 2), rectangular(-1, 1)],
      ([x, y]) => [x! - 2 * y!, y!],
      2,
    );
    const line = straightOf(straight);
    expect(cornerFigure(straight, line, 0)).toEqual([-3, 4]);
    expect(cornerRadius(straight, line, 0, 1)).toEqual([0, Math.hypot(4, 1)]);
    const bent = modelOfFunction([rectangular(-1, 1)], ([x]) => [Math.abs(x!) + 0.1 * x!]);
    expect(cornerFigure(bent, straightOf(bent), 0)[0]).toBeGreaterThan(0.5);
    expect(atOnce(worstFigure(bent, straightOf(bent), 0))[0]).toBe(0);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  angleOf,
  arcCosineOf,
  arcTangentOf,
  cosineOf,
  cubeRootOf,
  expOf,
  hypotenuse,
  logOf,
  sineOf,
  tangentOf,
} from '../../src/num/elementary.ts';

/** One unit in the last place of a value. */
const ulpOf = (value: number): number =>
  2 ** (Math.floor(Math.log2(Math.max(Math.abs(value), 2 ** -1000))) - 52);

type OfOne = (x: number) => number;

function expectNear(ours: OfOne, engines: OfOne, low: number, high: number, ulps: number): void {
  fc.assert(
    fc.property(fc.double({ min: low, max: high, noNaN: true }), (x) => {
      const value = engines(x);
      expect(Math.abs(ours(x) - value)).toBeLessThanOrEqual(ulps * ulpOf(value));
    }),
    { seed: 1, numRuns: 300 },
  );
}

describe('our own logarithm, exponential, sines and angles', () => {
  // The engine's own are good to less than one unit, and seldom the same last bit as ours.
  it.each<[string, OfOne, OfOne, number, number, number]>([
    ['logarithm', logOf, Math.log, 1e-12, 0.5, 3],
    ['logarithm', logOf, Math.log, 2, 1e12, 3],
    ['exponential', expOf, Math.exp, -50, 50, 3],
    ['sine', sineOf, Math.sin, -7, 7, 1],
    ['sine of many turns', sineOf, Math.sin, 7, 1e5, 1],
    ['cosine', cosineOf, Math.cos, -7, 7, 1],
    ['cosine of many turns', cosineOf, Math.cos, -1e5, -7, 1],
    ['tangent', tangentOf, Math.tan, -10, 10, 3],
    ['arc tangent', arcTangentOf, Math.atan, -5, 5, 2],
    ['arc tangent of much', arcTangentOf, Math.atan, 5, 1e12, 2],
    ['arc cosine', arcCosineOf, Math.acos, -1, 1, 3],
    ['cube root', cubeRootOf, Math.cbrt, 1e-9, 1e9, 2],
  ])('%s: as the engine’s', (_name, ours, engines, low, high, ulps) => {
    expectNear(ours, engines, low, high, ulps);
  });

  it('has the angle of every direction, and its length', () => {
    const number = fc.double({ min: -1e3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(number, number, (x, y) => {
        // The engine tells -0 from 0 behind the vertex; we do not.
        const angle = Math.atan2(y === 0 ? 0 : y, x === 0 ? 0 : x);
        expect(Math.abs(angleOf(y, x) - angle)).toBeLessThanOrEqual(2 * ulpOf(angle));
        const length = Math.hypot(x, y);
        if (length > 1e-100)
          expect(Math.abs(hypotenuse(x, y) - length)).toBeLessThanOrEqual(2 * ulpOf(length));
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  it('is exact where it should be', () => {
    expect([logOf(1), expOf(0), sineOf(0), cosineOf(0), angleOf(0, 1)]).toEqual([0, 1, 0, 1, 0]);
    expect([expOf(-1e9), angleOf(0, 0), angleOf(0, -1), angleOf(-2, 0)]).toEqual([
      0,
      0,
      Math.PI,
      -Math.PI / 2,
    ]);
    // What a double of a quarter turn leaves out is seen: 6.1e-17, and three times that.
    expect(cosineOf(Math.PI / 2)).toBe(6.123233995736766e-17);
    expect(cosineOf((3 * Math.PI) / 2)).toBe(-1.8369701987210297e-16);
    expect(sineOf(Math.PI)).toBe(1.2246467991473532e-16);
  });

  it('takes turns of any size', () => {
    // Beyond 1e5 full turns are taken off as the double 2 pi: an error of 2.4e-16 a turn.
    expect(Math.abs(sineOf(1e9) - Math.sin(1e9))).toBeLessThan((2.5e-16 * 1e9) / 6);
  });
});

import { describe, expect, it } from 'vitest';
import { giveMm } from '../../src/jig/give.ts';

const section = { widthMm: 20, heightMm: 10 };
/** 3 E I with E = 1000 and I = 10 x 20^3 / 12. */
const bending = (3 * 1000 * 10 * 20 ** 3) / 12;

describe('how far an arm yields under 30 N', () => {
  it('beyond its last screw as a cantilever: P L^3 / 3 E I', () => {
    expect(giveMm(140, [0, 100], section)).toBeCloseTo((30 * 40 ** 3) / bending, 12);
  });

  it('in the middle between two screws sixteen times less than on one of them alone', () => {
    // P (L/2)^4 / 3 E I L is P L^3 / 48 E I; the cantilever of length L is P L^3 / 3 E I.
    expect(giveMm(50, [0, 100], section)).toBeCloseTo(giveMm(100, [0], section) / 16, 12);
  });

  it('not at all over a screw, without end on none', () => {
    expect(giveMm(100, [0, 100], section)).toBe(0);
    expect(giveMm(100, [], section)).toBe(Infinity);
  });
});

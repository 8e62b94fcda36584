import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Height } from '../../src/measure/bed-plane.ts';
import { leastSquaresPlane, planeAt, rangeOff } from '../../src/measure/bed-plane.ts';
import { minimumZone } from '../../src/measure/minimum-zone.ts';
import { bruteZone } from './brute-zone.ts';

interface Reference {
  readonly moody_1955: {
    readonly points_mm_mm_um_by_line: Readonly<Record<string, readonly (readonly number[])[]>>;
    readonly recomputed: {
      readonly LS_PV_um: number;
      readonly LS_rms_um: number;
      readonly MZ_um: number;
      readonly tolerance_um: number;
      readonly n_points: number;
    };
    readonly published_flatness_um: number;
  };
}
const { moody_1955: MOODY } = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', 'reference', 'flatness.json'), 'utf8'),
) as Reference;

const heights = (points: readonly (readonly number[])[]): readonly Height[] =>
  points.map(([x, y, z]) => ({ at: { x: x!, y: y! }, heightMm: z! }));
const grid = (z: readonly (readonly number[])[]): readonly Height[] =>
  heights(z.flatMap((row, j) => row.map((value, i) => [i - 1, j - 1, value])));

describe('the plane and flatness of a bed', () => {
  // Source: J. C. Moody, The Tool Engineer, October 1955, pp. 15-21, table 1, with B. Allen's
  // corrections of 2019: all points between two planes 0.00018 in apart. The least-squares and
  // minimum-zone figures were computed independently (geometry.md section 4).
  it('finds the flatness of the surface plate of 1955', () => {
    const points = heights(Object.values(MOODY.points_mm_mm_um_by_line).flat());
    expect(points).toHaveLength(MOODY.recomputed.n_points);
    const plane = leastSquaresPlane(points)!;
    const zone = minimumZone(points)!;
    const tolerance = MOODY.recomputed.tolerance_um;
    expect(Math.abs(rangeOff(points, plane) - MOODY.recomputed.LS_PV_um)).toBeLessThan(tolerance);
    expect(
      Math.abs(
        Math.hypot(...plane.residualsMm) / Math.sqrt(points.length) - MOODY.recomputed.LS_rms_um,
      ),
    ).toBeLessThan(tolerance);
    expect(Math.abs(zone.flatnessMm - MOODY.recomputed.MZ_um)).toBeLessThan(tolerance);
    // The article's own way pins the edges, so its planes stand a little further apart.
    expect(zone.flatnessMm).toBeLessThan(MOODY.published_flatness_um);
    expect(zone.flatnessMm).toBeGreaterThan(0.9 * MOODY.published_flatness_um);
  });

  // Source: exact cases computed independently (geometry.md section 4).
  it.each([
    [
      'one corner of a square up',
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
        [1, 1, 1],
      ],
      0.5,
      0.5,
    ],
    [
      'a saddle',
      [
        [0, 0, 1],
        [1, 0, -1],
        [0, 1, -1],
        [1, 1, 1],
      ],
      2,
      2,
    ],
    [
      'five places of a plate',
      [
        [11.5, 7, 1.1],
        [18.5, 6.9, 1.03],
        [4.5, 13, 1.02],
        [25.5, 30, 1.03],
        [11.5, 37.5, 1.02],
      ],
      0.07209731317604229,
      0.06726229508196727,
    ],
  ] as const)('is exact for %s', (_, points, ls, mz) => {
    const all = heights(points);
    expect(rangeOff(all, leastSquaresPlane(all)!)).toBeCloseTo(ls, 12);
    expect(minimumZone(all)!.flatnessMm).toBeCloseTo(mz, 12);
  });

  it.each([
    [
      'a corner bump',
      [
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 1],
      ],
      5 / 6,
      0.75,
    ],
    [
      'an edge bump',
      [
        [0, 0, 0],
        [0, 0, 1],
        [0, 0, 0],
      ],
      1,
      1,
    ],
    [
      'a hollow along x',
      [
        [1, 0, 1],
        [1, 0, 1],
        [1, 0, 1],
      ],
      1,
      1,
    ],
    // Classroom data from memory, source not found; results computed independently.
    [
      'nine classroom readings',
      [
        [0, 4, 6],
        [-5, 20, -9],
        [-10, -3, 8],
      ],
      32 + 1 / 3,
      27,
    ],
  ] as const)('is exact for a grid with %s', (_, z, ls, mz) => {
    const all = grid(z);
    expect(rangeOff(all, leastSquaresPlane(all)!)).toBeCloseTo(ls, 10);
    expect(minimumZone(all)!.flatnessMm).toBeCloseTo(mz, 10);
  });

  const bed = fc.array(
    fc.tuple(
      fc.integer({ min: 0, max: 600 }),
      fc.integer({ min: 0, max: 400 }),
      fc.integer({ min: -300, max: 300 }),
    ),
    { minLength: 4, maxLength: 9 },
  );

  it('agrees with trying every pair of planes that can be the closest', () => {
    fc.assert(
      fc.property(bed, (points) => {
        const all = heights(points.map(([x, y, z]) => [x, y, z / 1000]));
        const zone = minimumZone(all);
        fc.pre(zone !== null);
        expect(Math.abs(zone.flatnessMm - bruteZone(all))).toBeLessThan(1e-9);
        expect(rangeOff(all, zone.plane)).toBeCloseTo(zone.flatnessMm, 10);
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('changes with a lean by that lean and keeps its flatness', () => {
    fc.assert(
      fc.property(bed, fc.double({ min: -0.01, max: 0.01, noNaN: true }), (points, lean) => {
        const all = heights(points.map(([x, y, z]) => [x, y, z / 1000]));
        const leaning = all.map(({ at, heightMm }) => ({ at, heightMm: heightMm + lean * at.x }));
        const [before, after] = [leastSquaresPlane(all), leastSquaresPlane(leaning)];
        fc.pre(before !== null && after !== null);
        expect(after.leanX - before.leanX).toBeCloseTo(lean, 9);
        expect(after.leanY).toBeCloseTo(before.leanY, 9);
        expect(minimumZone(leaning)!.flatnessMm).toBeCloseTo(minimumZone(all)!.flatnessMm, 9);
        const place = { x: 123, y: 45 };
        expect(planeAt(after, place) - planeAt(before, place)).toBeCloseTo(lean * place.x, 8);
      }),
      { seed: 12, numRuns: 60 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcBetween, placedPath, reversedPath, stretchesOf } from '../../src/plane/path.ts';
import type { Path } from '../../src/plane/path.ts';
import { isInsidePath, toPathMm } from '../../src/plane/path-distance.ts';
import { flattened, pathAreaMm2, pathBounds } from '../../src/plane/path-measure.ts';
import { isInside, toEdgeMm } from '../../src/plane/distance.ts';
import { signedAreaMm2 } from '../../src/plane/measure.ts';

const circle = (r: number): Path => [
  { at: { x: r, y: 0 }, bulge: 1 },
  { at: { x: -r, y: 0 }, bulge: 1 },
];
/** A square with a half-round bite taken out of its right side. */
const bitten: Path = [
  { at: { x: 0, y: 0 }, bulge: 0 },
  { at: { x: 40, y: 0 }, bulge: 0 },
  { at: { x: 40, y: 10 }, bulge: -1 },
  { at: { x: 40, y: 30 }, bulge: 0 },
  { at: { x: 40, y: 40 }, bulge: 0 },
  { at: { x: 0, y: 40 }, bulge: 0 },
];

describe('an arc', () => {
  it('with a bulge of 1 is a half circle, with tan(22.5 deg) a quarter', () => {
    const half = arcBetween({ x: 5, y: 0 }, { x: -5, y: 0 }, 1);
    expect(half).toMatchObject({ centre: { x: 0, y: 0 }, radiusMm: 5, sweepRad: Math.PI });
    const quarter = arcBetween({ x: 5, y: 0 }, { x: 0, y: 5 }, Math.tan(Math.PI / 8));
    expect(quarter.centre.x).toBeCloseTo(0, 12);
    expect(quarter.centre.y).toBeCloseTo(0, 12);
    expect(quarter.radiusMm).toBeCloseTo(5, 12);
    expect(quarter.sweepRad).toBeCloseTo(Math.PI / 2, 12);
  });

  it('keeps both its ends at its radius, whichever way it runs', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        fc.boolean(),
        (x, y, size, left) => {
          const { centre, radiusMm, from, to, startRad, sweepRad } = arcBetween(
            { x: 0, y: 0 },
            { x, y },
            left ? size : -size,
          );
          const end = startRad + sweepRad;
          // Ulps of the radius, which grows as 1 / bulge.
          const slack = 1e-9 * (1 + radiusMm);
          expect(
            Math.abs(Math.hypot(from.x - centre.x, from.y - centre.y) - radiusMm),
          ).toBeLessThan(slack);
          expect(Math.abs(centre.x + radiusMm * Math.cos(end) - to.x)).toBeLessThan(slack);
          expect(Math.abs(centre.y + radiusMm * Math.sin(end) - to.y)).toBeLessThan(slack);
        },
      ),
      { seed: 1 },
    );
  });
});

describe('a closed path', () => {
  it('has the area of its circle, or of its square less the bite', () => {
    expect(pathAreaMm2(circle(10))).toBeCloseTo(100 * Math.PI, 10);
    expect(pathAreaMm2(bitten)).toBeCloseTo(1600 - 50 * Math.PI, 10);
    expect(pathAreaMm2(reversedPath(bitten))).toBeCloseTo(50 * Math.PI - 1600, 10);
  });

  it('comes back when it is reversed twice', () => {
    expect(reversedPath(reversedPath(bitten))).toEqual(bitten);
  });

  it('is as wide as its arcs reach', () => {
    expect(pathBounds(circle(10))).toMatchObject({ lowX: -10, highX: 10, lowY: -10, highY: 10 });
    expect(pathBounds(bitten)).toMatchObject({ lowX: 0, highX: 40, lowY: 0, highY: 40 });
    const turned = placedPath(
      [
        { at: { x: 0, y: 0 }, bulge: 0 },
        { at: { x: 10, y: 0 }, bulge: 1 },
      ],
      Math.PI / 2,
      { x: 3, y: 4 },
    );
    // A half disc standing on its flat side, which was below it, now to its right: 5 to the left.
    expect(pathBounds(turned).lowX).toBeCloseTo(-2, 12);
    expect(pathBounds(turned).highY).toBeCloseTo(14, 12);
  });

  it('is told from inside and outside, bites and bows included', () => {
    expect(isInsidePath({ x: 0, y: 9.99 }, circle(10))).toBe(true);
    expect(isInsidePath({ x: 7.2, y: 7.2 }, circle(10))).toBe(false);
    // On the chord of both halves.
    expect(isInsidePath({ x: 3, y: 0 }, circle(10))).toBe(true);
    expect(isInsidePath({ x: 11, y: 0 }, circle(10))).toBe(false);
    expect(isInsidePath({ x: 39, y: 20 }, bitten)).toBe(false);
    expect(isInsidePath({ x: 40, y: 20 }, bitten)).toBe(false);
    expect(isInsidePath({ x: 35, y: 20 }, bitten)).toBe(false);
    expect(isInsidePath({ x: 25, y: 20 }, bitten)).toBe(true);
    expect(toPathMm({ x: 35, y: 20 }, bitten)).toBeCloseTo(5, 12);
    expect(toPathMm({ x: 40, y: 20 }, bitten)).toBeCloseTo(10, 12);
    expect(toPathMm({ x: 3, y: 0 }, circle(10))).toBeCloseTo(7, 12);
    expect(toPathMm({ x: 0, y: 0 }, circle(10))).toBeCloseTo(10, 12);
  });

  it('agrees with its own chords about area, inside and distance', () => {
    const corner = fc.record({
      at: fc.record({ radius: fc.double({ min: 20, max: 60, noNaN: true }) }),
      bulge: fc.oneof(fc.constant(0), fc.double({ min: -0.15, max: 0.3, noNaN: true })),
    });
    const place = fc.double({ min: -80, max: 80, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(corner, { minLength: 4, maxLength: 9 }),
        place,
        place,
        (corners, x, y) => {
          const path: Path = corners.map(({ at, bulge }, i) => {
            const turn = (2 * Math.PI * i) / corners.length;
            return { at: { x: at.radius * Math.cos(turn), y: at.radius * Math.sin(turn) }, bulge };
          });
          const chords = flattened(path, 1e-4);
          const p = { x, y };
          // Chords stray by 1e-4 at most.
          expect(Math.abs(toPathMm(p, path) - toEdgeMm(p, chords))).toBeLessThan(2e-4);
          const arcLengthMm = 2 * Math.PI * 80;
          expect(Math.abs(pathAreaMm2(path) - signedAreaMm2(chords))).toBeLessThan(
            1e-4 * arcLengthMm * 3,
          );
          if (toPathMm(p, path) > 1e-3) expect(isInsidePath(p, path)).toBe(isInside(p, chords));
          expect(stretchesOf(path)).toHaveLength(path.length);
        },
      ),
      { seed: 1 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grown, intersectionOf, sweptByBox, unionOf } from '../../src/plane/clip.ts';
import { isInside } from '../../src/plane/distance.ts';
import { signedAreaMm2 } from '../../src/plane/measure.ts';
import { moved } from '../../src/plane/move.ts';
import { rectangleOutline, type Outline } from '../../src/plane/outline.ts';
import { evenly } from './evenly.ts';

const box = (w: number, h: number, x = 0, y = 0): Outline<'layout'> =>
  moved(rectangleOutline(w, h, 0, 0.01), { x, y });
const area = (outlines: readonly Outline<'layout'>[]): number =>
  outlines.reduce((sum, outline) => sum + signedAreaMm2(outline), 0);

/** An L with arms 40 wide. */
const bracket: Outline<'layout'> = [
  { x: 0, y: 0 },
  { x: 120, y: 0 },
  { x: 120, y: 40 },
  { x: 40, y: 40 },
  { x: 40, y: 100 },
  { x: 0, y: 100 },
];

describe('offsets and unions', () => {
  it('grow a box to w h + 2 r (w + h) + pi r^2', () => {
    const exact = 40 * 20 + 2 * 3.175 * 60 + Math.PI * 3.175 ** 2;
    const got = area(grown([box(40, 20)], 3.175, 0.0001));
    // Chords lose at most chord x length of the four quarter arcs; the grid adds 1e-6 x the way round.
    expect(exact - got).toBeGreaterThan(-2e-4);
    expect(exact - got).toBeLessThan(0.0001 * 2 * Math.PI * 3.175 + 2e-4);
  });

  it('answer nothing when an inset leaves nothing', () => {
    expect(grown([bracket], -25, 0.01)).toEqual([]);
  });

  it('keep micrometres: the library alone would round to hundredths', () => {
    const [outline] = unionOf([box(2.46912, 2)]);
    expect(Math.max(...outline!.map((p) => p.x))).toBeCloseTo(1.23456, 6);
  });

  it('unite and intersect two boxes: areas add up', () => {
    const [a, b] = [box(10, 10), box(10, 10, 6, 3)];
    expect(area(intersectionOf([a], [b]))).toBeCloseTo(4 * 7, 6);
    expect(area(unionOf([a, b]))).toBeCloseTo(200 - 28, 6);
  });

  it('give plain places, without the third number of the library', () => {
    expect(Object.keys(unionOf([box(1, 1)])[0]![0]!)).toEqual(['x', 'y']);
  });
});

describe('a box swept round an outline', () => {
  it('covers (w + a)(h + b) for a box round a box', () => {
    expect(area(sweptByBox(box(30, 20), 110, 90))).toBeCloseTo(140 * 110, 6);
  });

  it('covers exactly the places from which the box reaches the outline', () => {
    const swept = sweptByBox(bracket, 30, 16);
    const place = evenly(-40, 160);
    fc.assert(
      fc.property(place, place, (x, y) => {
        const reaches = area(intersectionOf([box(30, 16, x, y)], [bracket])) > 1e-3;
        const inside = swept.some((outline) => isInside({ x, y }, outline));
        // A box that only just touches may be called either way.
        const touches = area(intersectionOf([box(30.01, 16.01, x, y)], [bracket])) > 0;
        expect(inside).toBe(reaches || (touches && inside));
      }),
      { seed: 22, numRuns: 200 },
    );
  });
});

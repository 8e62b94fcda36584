import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toEdgeMm } from '../../src/plane/distance.ts';
import { boundsOf, signedAreaMm2 } from '../../src/plane/measure.ts';
import { mapped, turned } from '../../src/plane/move.ts';
import { circleOutline, rectangleOutline, slotOutline } from '../../src/plane/outline.ts';

const seed = { seed: 20, numRuns: 60 };
const length = fc.double({ min: 0.5, max: 300, noNaN: true });

describe('outlines', () => {
  it('keep every chord of a circle within the distance asked for', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 0.001, max: 0.2, noNaN: true }), (radius, chord) => {
        const outline = circleOutline(radius, chord);
        // The deepest point of a chord is its middle: radius (1 - cos(half a chord's angle)).
        const toMiddle = toEdgeMm({ x: 0, y: 0 }, outline);
        expect(radius - toMiddle).toBeLessThanOrEqual(chord * (1 + 1e-9));
        expect(toMiddle).toBeLessThan(radius);
      }),
      seed,
    );
  });

  it('have the area of a regular polygon, closed form n r^2 sin(2 pi / n) / 2', () => {
    const outline = circleOutline(10, 0.01);
    const n = outline.length;
    expect(signedAreaMm2(outline)).toBeCloseTo((n * 100 * Math.sin((2 * Math.PI) / n)) / 2, 9);
  });

  it('give a rectangle with round corners the area w h - (4 - pi) r^2, less what chords leave', () => {
    const outline = rectangleOutline(58, 40, 3.2, 0.001);
    const exact = 58 * 40 - (4 - Math.PI) * 3.2 ** 2;
    // Chords lose at most chord x length of the four quarter arcs.
    expect(exact - signedAreaMm2(outline)).toBeGreaterThan(0);
    expect(exact - signedAreaMm2(outline)).toBeLessThan(0.001 * 2 * Math.PI * 3.2);
  });

  it('draw a sharp rectangle with four corners and no more', () => {
    expect(rectangleOutline(20, 10, 0, 0.01)).toHaveLength(4);
    expect(signedAreaMm2(rectangleOutline(20, 10, 0, 0.01))).toBe(200);
  });

  it('count both round ends in the length of a slot', () => {
    const box = boundsOf(slotOutline(40, 8, 0.01));
    expect(box.highX - box.lowX).toBeCloseTo(40, 9);
    expect(box.highY - box.lowY).toBeCloseTo(8, 9);
  });

  it('never name one place twice in a row', () => {
    for (const outline of [slotOutline(40, 8, 0.01), rectangleOutline(8, 8, 4, 0.01)])
      outline.forEach((p, i) => {
        const q = outline.at(i - 1)!;
        expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThan(1e-6);
      });
  });

  it('stay counter-clockwise when they are mirrored', () => {
    const outline = rectangleOutline(20, 10, 2, 0.01);
    const mirrored = mapped(outline, (p) => ({ x: 30 - p.x, y: p.y }), false);
    expect(signedAreaMm2(mirrored)).toBeCloseTo(signedAreaMm2(outline), 9);
  });

  it('keep their area when they are turned', () => {
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), (turn) => {
        const outline = slotOutline(40, 8, 0.01);
        expect(signedAreaMm2(turned(outline, turn))).toBeCloseTo(signedAreaMm2(outline), 8);
      }),
      seed,
    );
  });
});

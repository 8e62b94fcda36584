import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betweenOutlinesMm, isInside, toOutlineMm } from '../../src/plane/distance.ts';
import { moved } from '../../src/plane/move.ts';
import { circleOutline, rectangleOutline, type Outline } from '../../src/plane/outline.ts';
import { evenly } from './evenly.ts';

const square = (size: number, x: number, y: number): Outline<'layout'> =>
  moved(rectangleOutline(size, size, 0, 0.01), { x, y });

describe('distances', () => {
  it('between two squares side by side are the gap', () => {
    expect(betweenOutlinesMm(square(10, 0, 0), square(10, 14, 0))).toBe(4);
  });

  it('between two squares corner to corner go across the corner: 3, 4, 5', () => {
    expect(betweenOutlinesMm(square(10, 0, 0), square(10, 13, 14))).toBe(5);
  });

  it('are nothing when one lies in the other, or across it without a vertex inside', () => {
    expect(betweenOutlinesMm(square(100, 0, 0), square(2, 10, 10))).toBe(0);
    expect(betweenOutlinesMm(square(2, 10, 10), square(100, 0, 0))).toBe(0);
    const bar = rectangleOutline<'layout'>(100, 2, 0, 0.01);
    const post = rectangleOutline<'layout'>(2, 100, 0, 0.01);
    expect(betweenOutlinesMm(bar, post)).toBe(0);
  });

  it('from a place to a disc are its distance from the middle less the radius', () => {
    fc.assert(
      fc.property(evenly(-50, 50), evenly(-50, 50), (x, y) => {
        const disc = circleOutline<'layout'>(20, 0.001);
        const exact = Math.max(0, Math.hypot(x, y) - 20);
        const got = toOutlineMm({ x, y }, disc);
        // The disc is drawn up to 0.001 too small.
        expect(got).toBeGreaterThanOrEqual(exact - 1e-9);
        expect(got).toBeLessThanOrEqual(exact + 0.001 + 1e-9);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  it('know the inside of a hollow corner from its outside', () => {
    const corner: Outline<'layout'> = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 4 },
      { x: 4, y: 4 },
      { x: 4, y: 10 },
      { x: 0, y: 10 },
    ];
    expect(isInside({ x: 2, y: 8 }, corner)).toBe(true);
    expect(isInside({ x: 8, y: 8 }, corner)).toBe(false);
    expect(toOutlineMm({ x: 7, y: 8 }, corner)).toBe(3);
  });
});

import { toSegmentMm } from '../../src/plane/distance.ts';
import type { Outline } from '../../src/plane/outline.ts';
import type { Frame, Point } from '../../src/plane/point.ts';

/** How far a place is from a closed line, mm. */
export const distanceToOutline = <F extends Frame>(p: Point<F>, outline: Outline<F>): number =>
  Math.min(...outline.map((a, i) => toSegmentMm(p, a, outline[(i + 1) % outline.length]!)));

import { hypotenuse } from '../num/elementary.ts';
import type { Frame, Point } from './point.ts';
import type { Outline } from './outline.ts';

/** Whether the place lies inside the outline, by counting crossings; on the edge either may be said. */
export function isInside<F extends Frame>(p: Point<F>, outline: Outline<F>): boolean {
  let inside = false;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x))
      inside = !inside;
  });
  return inside;
}

/** Distance from a place to a segment, mm; the segment may be a single place. */
export function toSegmentMm<F extends Frame>(p: Point<F>, a: Point<F>, b: Point<F>): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2;
  const t = Math.min(1, Math.max(0, along));
  return hypotenuse(p.x - (a.x + t * dx), p.y - (a.y + t * dy));
}

/** Distance from a place to the filled outline, mm; 0 inside. */
export function toOutlineMm<F extends Frame>(p: Point<F>, outline: Outline<F>): number {
  return isInside(p, outline) ? 0 : toEdgeMm(p, outline);
}

/** Distance from a place to the line of the outline, mm, from inside or outside. */
export function toEdgeMm<F extends Frame>(p: Point<F>, outline: Outline<F>): number {
  return outline.reduce(
    (least, a, i) => Math.min(least, toSegmentMm(p, a, outline[(i + 1) % outline.length]!)),
    Infinity,
  );
}

/** Distance between the lines of two closed outlines, mm; 0 when they cross. */
export function betweenEdgesMm<F extends Frame>(a: Outline<F>, b: Outline<F>): number {
  let least = Infinity;
  a.forEach((a0, i) => {
    const a1 = a[(i + 1) % a.length]!;
    b.forEach((b0, j) => {
      const b1 = b[(j + 1) % b.length]!;
      // Most pairs are farther apart than the nearest so far, by their boxes alone.
      if (apartMm(a0.x, a1.x, b0.x, b1.x) > least || apartMm(a0.y, a1.y, b0.y, b1.y) > least)
        return;
      least = cross(a0, a1, b0, b1)
        ? 0
        : Math.min(
            least,
            toSegmentMm(a0, b0, b1),
            toSegmentMm(a1, b0, b1),
            toSegmentMm(b0, a0, a1),
            toSegmentMm(b1, a0, a1),
          );
    });
  });
  return least;
}

/** Distance between two filled outlines, mm; 0 when they share a place. */
export function betweenOutlinesMm<F extends Frame>(a: Outline<F>, b: Outline<F>): number {
  const inA = b[0] !== undefined && isInside(b[0], a);
  const inB = a[0] !== undefined && isInside(a[0], b);
  return inA || inB ? 0 : betweenEdgesMm(a, b);
}

/** What lies between two stretches of one axis, mm; negative when they overlap. */
const apartMm = (a0: number, a1: number, b0: number, b1: number): number =>
  Math.max(Math.min(b0, b1) - Math.max(a0, a1), Math.min(a0, a1) - Math.max(b0, b1));

function cross<F extends Frame>(a: Point<F>, b: Point<F>, c: Point<F>, d: Point<F>): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

function side<F extends Frame>(a: Point<F>, b: Point<F>, p: Point<F>): number {
  return Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
}

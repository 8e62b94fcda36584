import type { Frame, Point } from './point.ts';
import type { Outline } from './outline.ts';

/**
 * Shares of the way from `a` to `b` between which it runs inside outlines (holes clockwise), as pairs; a
 * way of no length is inside from 0 to 1 or not at all. A way along an edge may be said to be either.
 */
export function insideShares<F extends Frame>(
  a: Point<F>,
  b: Point<F>,
  outlines: readonly Outline<F>[],
): readonly (readonly [number, number])[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const cuts: number[] = [0, 1];
  if (dx !== 0 || dy !== 0)
    for (const outline of outlines)
      outline.forEach((p, i) => {
        const q = outline[(i + 1) % outline.length]!;
        const [ex, ey] = [q.x - p.x, q.y - p.y];
        const across = dx * ey - dy * ex;
        if (across === 0) return;
        const share = ((p.x - a.x) * ey - (p.y - a.y) * ex) / across;
        const onEdge = ((p.x - a.x) * dy - (p.y - a.y) * dx) / across;
        if (share > 0 && share < 1 && onEdge >= 0 && onEdge <= 1) cuts.push(share);
      });
  cuts.sort((s, t) => s - t);
  return cuts.flatMap((from, k) => {
    const to = cuts[k + 1];
    if (to === undefined || (to === from && cuts.length > 2)) return [];
    const half = (from + to) / 2;
    return isWithin({ x: a.x + half * dx, y: a.y + half * dy }, outlines)
      ? [[from, to] as const]
      : [];
  });
}

/** Whether a place lies in outlines of which those that run clockwise are holes. */
export function isWithin<F extends Frame>(
  p: { readonly x: number; readonly y: number },
  outlines: readonly Outline<F>[],
): boolean {
  let inside = false;
  for (const outline of outlines) {
    let a = outline.at(-1)!;
    for (const b of outline) {
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x))
        inside = !inside;
      a = b;
    }
  }
  return inside;
}

import type { Outline } from './outline.ts';
import type { Frame, Point } from './point.ts';

/** Whether the edges of two closed outlines meet or touch anywhere; an outline of one place has none. */
export function doMeet<F extends Frame>(one: Outline<F>, other: Outline<F>): boolean {
  return one.some((a, i) => {
    const b = one[(i + 1) % one.length]!;
    const [lowX, highX] = a.x < b.x ? [a.x, b.x] : [b.x, a.x];
    const [lowY, highY] = a.y < b.y ? [a.y, b.y] : [b.y, a.y];
    for (let k = 0; k < other.length; k++) {
      const c = other[k]!;
      const d = other[k + 1 === other.length ? 0 : k + 1]!;
      if ((c.x < lowX && d.x < lowX) || (c.x > highX && d.x > highX)) continue;
      if ((c.y < lowY && d.y < lowY) || (c.y > highY && d.y > highY)) continue;
      if (areAcross(a, b, c, d) && areAcross(c, d, a, b)) return true;
    }
    return false;
  });
}

/** Whether two places lie on different sides of a line, or on it. */
function areAcross<F extends Frame>(a: Point<F>, b: Point<F>, c: Point<F>, d: Point<F>): boolean {
  const [x, y] = [b.x - a.x, b.y - a.y];
  const one = x * (c.y - a.y) - y * (c.x - a.x);
  const other = x * (d.y - a.y) - y * (d.x - a.x);
  return one === 0 || other === 0 || one > 0 !== other > 0;
}

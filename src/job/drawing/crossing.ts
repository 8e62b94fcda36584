import type { Outline } from '../../plane/outline.ts';
import type { Point } from '../../plane/point.ts';

/** A place at which an outline crosses or touches itself; null when it does not. */
export function crossingOf(outline: Outline<'blank'>): Point<'blank'> | null {
  const n = outline.length;
  const sides = outline.map((a, i) => {
    const b = outline[(i + 1) % n]!;
    return { i, a, b, low: Math.min(a.x, b.x), high: Math.max(a.x, b.x) };
  });
  // From left to right, so that only sides that share some x are held against each other.
  sides.sort((one, other) => one.low - other.low);
  let open: typeof sides = [];
  for (const side of sides) {
    open = open.filter(({ high }) => high >= side.low);
    for (const other of open) {
      const apart = Math.abs(side.i - other.i);
      if (apart !== 1 && apart !== n - 1 && meet(side.a, side.b, other.a, other.b)) return side.a;
    }
    open.push(side);
  }
  return null;
}

const turn = (a: Point<'blank'>, b: Point<'blank'>, p: Point<'blank'>): number =>
  Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));

const meet = (
  a: Point<'blank'>,
  b: Point<'blank'>,
  c: Point<'blank'>,
  d: Point<'blank'>,
): boolean => {
  const [ac, ad, ca, cb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (ac !== ad && ca !== cb && (ac !== 0 || ad !== 0)) return true;
  // All on one line: they meet when their boxes do.
  return ac === 0 && ad === 0 && overlap(a.x, b.x, c.x, d.x) && overlap(a.y, b.y, c.y, d.y);
};

const overlap = (a: number, b: number, c: number, d: number): boolean =>
  Math.max(Math.min(a, b), Math.min(c, d)) <= Math.min(Math.max(a, b), Math.max(c, d));

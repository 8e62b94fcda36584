import type { Outline } from '../../plane/outline.ts';
import type { Point } from '../../plane/point.ts';

/** A place at which an outline crosses, touches or runs back over itself; null when it does not. */
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
      const isNext = apart === 1 || apart === n - 1;
      if (isNext ? runsBack(side, other) : meet(side.a, side.b, other.a, other.b)) return side.a;
    }
    open.push(side);
  }
  return null;
}

interface Side {
  readonly a: Point<'blank'>;
  readonly b: Point<'blank'>;
}

/** Whether two sides that join lie on one line, one over the other. */
function runsBack(one: Side, other: Side): boolean {
  const [p, q] = [one.b.x - one.a.x, one.b.y - one.a.y];
  const [r, s] = [other.b.x - other.a.x, other.b.y - other.a.y];
  return p * s - q * r === 0 && p * r + q * s < 0;
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

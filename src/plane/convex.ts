import type { Point } from './point.ts';

const turn = (a: Point<'blank'>, b: Point<'blank'>, c: Point<'blank'>): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** Whether a counter-clockwise outline never turns right, but for `slackMm` of hollow at a vertex. */
export function isConvex(outline: readonly Point<'blank'>[], slackMm: number): boolean {
  const n = outline.length;
  return outline.every((b, k) => {
    const [a, c] = [outline[(k + n - 1) % n]!, outline[(k + 1) % n]!];
    return turn(a, b, c) >= -slackMm * Math.hypot(c.x - a.x, c.y - a.y);
  });
}

/** The vertices that a rubber band round the places would touch, counter-clockwise. */
export function hullOf<P extends Point<'blank'>>(places: readonly P[]): readonly P[] {
  const sorted = places.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const half = (some: readonly P[]): P[] => {
    const chain: P[] = [];
    for (const p of some) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, p) <= 0) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  if (sorted.length < 3) return sorted;
  return [...half(sorted), ...half(sorted.toReversed())];
}

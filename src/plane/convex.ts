import type { Point } from './point.ts';

const turn = (a: Point<'blank'>, b: Point<'blank'>, c: Point<'blank'>): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

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

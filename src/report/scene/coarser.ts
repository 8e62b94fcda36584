import { toSegmentMm } from '../../plane/distance.ts';
import type { Outline } from '../../plane/outline.ts';
import type { Frame } from '../../plane/point.ts';

/**
 * The same outline with fewer corners, none of those left out further than `strayMm` from it.
 * Source: D. H. Douglas and T. K. Peucker, Cartographica 10 (1973) 112-122.
 */
export function coarser<F extends Frame>(outline: Outline<F>, strayMm: number): Outline<F> {
  if (outline.length < 5) return outline;
  // Both halves of the way round from the first corner to the one furthest off.
  const far = furthest(outline, 0, outline.length, (p) =>
    Math.hypot(p.x - outline[0]!.x, p.y - outline[0]!.y),
  ).index;
  const closed = [...outline, outline[0]!];
  const keep = new Set([0, far]);
  const stretches: [number, number][] = [
    [0, far],
    [far, outline.length],
  ];
  for (let one = stretches.pop(); one !== undefined; one = stretches.pop()) {
    const [from, to] = one;
    const { index, away } = furthest(closed, from + 1, to, (p) =>
      toSegmentMm(p, closed[from]!, closed[to]!),
    );
    if (away <= strayMm) continue;
    keep.add(index);
    stretches.push([from, index], [index, to]);
  }
  return outline.filter((_, i) => keep.has(i));
}

function furthest<P>(places: readonly P[], from: number, to: number, awayOf: (p: P) => number) {
  let [index, away] = [from, 0];
  for (let i = from; i < to; i++) {
    const here = awayOf(places[i]!);
    if (here > away) [index, away] = [i, here];
  }
  return { index, away };
}

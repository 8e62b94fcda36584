import { isInsidePath, toPathMm } from './path-distance.ts';
import { placesAlong } from './path-measure.ts';
import type { Path, Stretch } from './path.ts';
import { stretchesOf } from './path.ts';
import type { Point } from './point.ts';

/** How far places of one path are from the line of another, mm; negative outside it. */
export interface Gaps {
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * The smallest and the largest gap from `inner` to `outer`, at places along `inner`: all its corners,
 * its arcs to `chordMm`, its straight pieces in parts and where they pass a corner of `outer`. The
 * true smallest may be a little smaller, the true largest a little larger.
 */
export function gapsWithin(inner: Path, outer: Path, chordMm: number): Gaps {
  const stretches = stretchesOf(inner);
  const parts = Math.max(1, Math.min(MOST_PARTS, Math.floor(MOST_PLACES / stretches.length)));
  const corners = outer.length <= MOST_CORNERS ? outer.map(({ at }) => at) : [];
  let [leastMm, mostMm] = [Infinity, -Infinity];
  for (const one of stretches)
    for (const p of placesOf(one, corners, parts, chordMm)) {
      const away = toPathMm(p, outer);
      const gap = isInsidePath(p, outer) ? away : -away;
      leastMm = Math.min(leastMm, gap);
      mostMm = Math.max(mostMm, gap);
    }
  return { leastMm, mostMm };
}

/** Bounds on the work: a drawing can have thousands of corners. */
const [MOST_PARTS, MOST_PLACES, MOST_CORNERS] = [64, 4000, 100] as const;

function placesOf(
  one: Stretch,
  corners: readonly Point<'blank'>[],
  parts: number,
  chordMm: number,
): readonly Point<'blank'>[] {
  if (one.kind === 'arc') return placesAlong(one, chordMm);
  const { from, to } = one;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const feet = corners
    .map((c) => ((c.x - from.x) * dx + (c.y - from.y) * dy) / (dx * dx + dy * dy))
    .filter((share) => share > 0 && share < 1);
  const shares = [...Array.from({ length: parts + 1 }, (_, i) => i / parts), ...feet];
  return shares.map((share) => ({ x: from.x + share * dx, y: from.y + share * dy }));
}

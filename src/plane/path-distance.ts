import { angleOf, cosineOf, hypotenuse, sineOf } from '../num/elementary.ts';
import { toSegmentMm } from './distance.ts';
import type { Path, Stretch } from './path.ts';
import { stretchesOf, sweepsOver } from './path.ts';
import type { Point } from './point.ts';

/** Distance from a place to the nearest place of the path's line, mm, exact for arcs too. */
export function toPathMm(p: Point<'blank'>, path: Path): number {
  return stretchesOf(path).reduce((least, one) => Math.min(least, toStretchMm(p, one)), Infinity);
}

/** Distance from a place to one piece of a path, mm. */
export function toStretchMm(p: Point<'blank'>, one: Stretch): number {
  if (one.kind === 'line') return toSegmentMm(p, one.from, one.to);
  const [dx, dy] = [p.x - one.centre.x, p.y - one.centre.y];
  const facesArc = (dx === 0 && dy === 0) || sweepsOver(one, angleOf(dy, dx));
  if (facesArc) return Math.abs(hypotenuse(dx, dy) - one.radiusMm);
  return Math.min(
    hypotenuse(p.x - one.from.x, p.y - one.from.y),
    hypotenuse(p.x - one.to.x, p.y - one.to.y),
  );
}

/** Whether a place lies within the path, by counting what a ray to the right crosses; on its line either may be said. */
export function isInsidePath(p: Point<'blank'>, path: Path): boolean {
  const crossed = stretchesOf(path).filter((one) =>
    one.kind === 'line' ? crosses(p, one.from, one.to) : crossesArc(p, one),
  );
  return crossed.length % 2 === 1;
}

/** Ends on the ray count as below it, so that a corner is crossed once. */
const isAcross = (y: number, fromY: number, toY: number): boolean => fromY > y !== toY > y;

const crosses = (p: Point<'blank'>, a: Point<'blank'>, b: Point<'blank'>): boolean =>
  isAcross(p.y, a.y, b.y) && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x);

/** Whether the ray crosses the arc an odd number of times: each quarter-to-quarter rise or fall by itself. */
function crossesArc(p: Point<'blank'>, arc: Extract<Stretch, { kind: 'arc' }>): boolean {
  const { from, to, centre, radiusMm, startRad, sweepRad } = arc;
  const [low, high] = [
    Math.min(startRad, startRad + sweepRad),
    Math.max(startRad, startRad + sweepRad),
  ];
  const half = Math.PI;
  const first = Math.ceil((low - half / 2) / half);
  const last = Math.floor((high - half / 2) / half);
  // The tops and bottoms of the circle that the arc passes, in the order of rising angle.
  const turns = Array.from(
    { length: Math.max(0, last - first + 1) },
    (_, i) => half * (first + i + 0.5),
  );
  const [start, end] = sweepRad > 0 ? [from, to] : [to, from];
  const ends = [
    { rad: low, y: start.y },
    ...turns.map((rad) => ({ rad, y: centre.y + radiusMm * sineOf(rad) })),
    { rad: high, y: end.y },
  ];
  const reach = Math.sqrt(Math.max(0, radiusMm ** 2 - (p.y - centre.y) ** 2));
  let count = 0;
  for (let i = 0; i + 1 < ends.length; i++) {
    const [a, b] = [ends[i]!, ends[i + 1]!];
    if (!isAcross(p.y, a.y, b.y)) continue;
    const isRight = cosineOf((a.rad + b.rad) / 2) > 0;
    if (p.x < centre.x + (isRight ? reach : -reach)) count++;
  }
  return count % 2 === 1;
}

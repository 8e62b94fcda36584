import { isInside, toSegmentMm } from './distance.ts';
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
  const facesArc = (dx === 0 && dy === 0) || sweepsOver(one, Math.atan2(dy, dx));
  if (facesArc) return Math.abs(Math.hypot(dx, dy) - one.radiusMm);
  return Math.min(
    Math.hypot(p.x - one.from.x, p.y - one.from.y),
    Math.hypot(p.x - one.to.x, p.y - one.to.y),
  );
}

/** Whether a place lies within the path; on its line either may be said. */
export function isInsidePath(p: Point<'blank'>, path: Path): boolean {
  const corners = path.map(({ at }) => at);
  // The area between an arc and its chord is added to, or taken from, that of the corners.
  const bows = stretchesOf(path).filter((one) => isBetweenArcAndChord(p, one)).length;
  return isInside(p, corners) !== (bows % 2 === 1);
}

function isBetweenArcAndChord(p: Point<'blank'>, one: Stretch): boolean {
  if (one.kind === 'line') return false;
  const { from, to, centre, radiusMm, sweepRad } = one;
  if (Math.hypot(p.x - centre.x, p.y - centre.y) >= radiusMm) return false;
  const side = (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
  // A counter-clockwise arc runs on the right of its chord.
  return sweepRad > 0 ? side < 0 : side > 0;
}

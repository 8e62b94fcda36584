import { sineOf } from '../num/elementary.ts';
import type { Bounds } from './measure.ts';
import { boundsOf, signedAreaMm2 } from './measure.ts';
import { arc } from './outline.ts';
import type { Outline } from './outline.ts';
import type { Path, Stretch } from './path.ts';
import { stretchesOf, sweepsOver } from './path.ts';

/** Area within a path, mm2, exact for arcs too; positive when it runs counter-clockwise. */
export function pathAreaMm2(path: Path): number {
  const bows = stretchesOf(path).map((one) =>
    one.kind === 'line' ? 0 : (one.radiusMm ** 2 * (one.sweepRad - sineOf(one.sweepRad))) / 2,
  );
  return signedAreaMm2(path.map(({ at }) => at)) + bows.reduce((sum, bow) => sum + bow, 0);
}

/** The upright box round a path, arcs included. */
export function pathBounds(path: Path): Bounds {
  const outermost = stretchesOf(path).flatMap((one) =>
    one.kind === 'line'
      ? []
      : QUARTERS.filter(({ directionRad }) => sweepsOver(one, directionRad)).map(({ x, y }) => ({
          x: one.centre.x + x * one.radiusMm,
          y: one.centre.y + y * one.radiusMm,
        })),
  );
  return boundsOf([...path.map(({ at }) => at), ...outermost]);
}

const QUARTERS = [
  { directionRad: 0, x: 1, y: 0 },
  { directionRad: Math.PI / 2, x: 0, y: 1 },
  { directionRad: Math.PI, x: -1, y: 0 },
  { directionRad: -Math.PI / 2, x: 0, y: -1 },
];

/** The path as chords that stray from its arcs by at most `chordMm`; every vertex lies on the path. */
export function flattened(path: Path, chordMm: number): Outline<'blank'> {
  return stretchesOf(path).flatMap((one) => placesAlong(one, chordMm).slice(0, -1));
}

/** Places along one piece of a path, both its ends included. */
export function placesAlong(one: Stretch, chordMm: number): readonly Stretch['from'][] {
  if (one.kind === 'line') return [one.from, one.to];
  const { centre, radiusMm, startRad, sweepRad } = one;
  const within = arc<'blank'>(
    centre.x,
    centre.y,
    radiusMm,
    startRad,
    startRad + sweepRad,
    chordMm,
  ).slice(1, -1);
  // The ends as they are, not by way of the centre.
  return [one.from, ...within, one.to];
}

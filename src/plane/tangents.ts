import { angleOf, cosineOf, sineOf } from '../num/elementary.ts';
import { stretchesOf, type Path, type Stretch } from './path.ts';
import type { Point } from './point.ts';

/** A line that an outline touches and does not cross: at both ends of a side, or at one place of an arc. */
export interface Tangent {
  /** Outwards. */
  readonly normalRad: number;
  /** One or two places (the centre of an arc), and how far beyond them the outline reaches. */
  readonly at: readonly Point<'blank'>[];
  readonly radiusMm: number;
}

/** Arcs get a tangent at every so many degrees at least. */
const STEP_RAD = Math.PI / 8;
/** A side this much inside what a rubber band would enclose does not bear on it, mm. */
const SLACK_MM = 1e-6;

/** Sides and arcs on which a convex body round the outline can bear, counter-clockwise by their normals. */
export function tangentsOf(path: Path): readonly Tangent[] {
  const stretches = stretchesOf(path);
  const reach = (rad: number): number =>
    Math.max(...stretches.map((stretch) => reachOf(stretch, cosineOf(rad), sineOf(rad))));
  return stretches
    .flatMap(candidates)
    .filter(({ normalRad, at, radiusMm }) => {
      const [c, s] = [cosineOf(normalRad), sineOf(normalRad)];
      const here = Math.min(...at.map(({ x, y }) => x * c + y * s)) + radiusMm;
      return here > reach(normalRad) - SLACK_MM;
    })
    .toSorted((one, other) => one.normalRad - other.normalRad)
    .filter((one, _, all) => isBestOfItsWay(one, all));
}

/** Of tangents along one line a side, with both its ends, stands for the arcs that it joins; else the first. */
function isBestOfItsWay(one: Tangent, all: readonly Tangent[]): boolean {
  const same = all.filter(({ normalRad }) => cosineOf(normalRad - one.normalRad) > ONE_WAY);
  const side = same.find(({ at }) => at.length > 1);
  return one === (side ?? same[0]);
}

/** Cosine of an angle below which two normals are one, a millionth of a radian. */
const ONE_WAY = 1 - 0.5e-12;

function candidates(stretch: Stretch): readonly Tangent[] {
  if (stretch.kind === 'line') {
    const { from, to } = stretch;
    const normalRad = angleOf(from.x - to.x, to.y - from.y);
    return [{ normalRad, at: [from, to], radiusMm: 0 }];
  }
  const { centre, radiusMm, startRad, sweepRad } = stretch;
  if (sweepRad <= 0) return [];
  const count = Math.ceil(sweepRad / STEP_RAD);
  return Array.from({ length: count + 1 }, (_, k) => {
    const rad = startRad + (sweepRad * k) / count;
    return { normalRad: angleOf(sineOf(rad), cosineOf(rad)), at: [centre], radiusMm };
  });
}

/** How far a stretch's ends, or an arc's round, reach in a direction. */
function reachOf(stretch: Stretch, c: number, s: number): number {
  const ends = Math.max(
    stretch.from.x * c + stretch.from.y * s,
    stretch.to.x * c + stretch.to.y * s,
  );
  if (stretch.kind === 'line' || stretch.sweepRad <= 0) return ends;
  const full = 2 * Math.PI;
  const turned = (angleOf(s, c) - stretch.startRad) % full;
  const isOn = ((turned % full) + full) % full <= stretch.sweepRad;
  return isOn ? stretch.centre.x * c + stretch.centre.y * s + stretch.radiusMm : ends;
}

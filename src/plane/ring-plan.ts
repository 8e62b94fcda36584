import { cosineOf, cubeRootOf, sineOf } from '../num/elementary.ts';
import { cutterWay, turnBetween, type WayPiece } from './cutter-way.ts';
import type { Path, Stretch } from './path.ts';
import { reversedPath } from './path.ts';
import type { Point } from './point.ts';
import { headingAt, placeAt } from './stretch-meet.ts';

/**
 * What a round cutter makes of a path, ready to be landed: each piece of the outline by where the
 * cutter's axis is at its start and its middle and in which direction the wall lies from there.
 *
 * - `line`, `arc`: a wall that the axis runs along.
 * - `round`: the axis stands, and the cutter's own edge is the outline.
 * - `corner`: the axis goes round a corner of what is left.
 */
export interface RingPlan {
  readonly loops: readonly (readonly PlanPiece[])[];
  readonly within: 1 | -1;
  /** Radius of the cutter that the plan is made for, mm. */
  readonly cutterMm: number;
}

export interface PlanPiece {
  readonly kind: 'line' | 'arc' | 'round' | 'corner';
  readonly start: Facing;
  readonly middle: Facing;
  /** Where the next piece starts, but of a corner, whose end the next piece may not reach. */
  readonly end: Facing;
}

/** A place of the axis and the direction of length 1 from it to the wall. */
export interface Facing {
  readonly at: Point<'blank'>;
  readonly toWall: Point<'blank'>;
}

/**
 * Largest misfit of an arc that went through the machine's axes and is taken as round through three of its
 * places, mm, where they make a circle out of round by up to `DISTORTION` of its radius: axes that lean by twice as much.
 */
const ARC_MM = 1e-4;
const DISTORTION = 1e-3;
/** Arcs of the cutter itself stay round; they are only kept shorter than a half turn. */
const MOST_RAD = Math.PI / 2;
/** A cutter as wide as the outline, to the rounding of a drawing, is taken as narrower by this, mm. */
const SPARE_MM = 1e-3;
const SMOOTH_RAD = 1e-6;

/** The plan of an outline cut from within or from outside; null when the cutter does not fit into it. */
export function ringPlan(
  path: Path,
  side: 'within' | 'outside',
  cutterMm: number,
): RingPlan | null {
  const walls = side === 'within' ? path : reversedPath(path);
  for (const radiusMm of [cutterMm, cutterMm - SPARE_MM]) {
    const ways = radiusMm > 0 ? cutterWay(walls, radiusMm) : [];
    if (ways.length === 0) continue;
    // From outside nobody gets into a hollow that closes behind the cutter.
    const reached = side === 'within' ? ways : [outermost(ways)];
    return {
      loops: reached.map(planOf),
      within: side === 'within' ? 1 : -1,
      cutterMm: radiusMm,
    };
  }
  return null;
}

type Way = readonly WayPiece[];

const outermost = (ways: readonly Way[]): Way =>
  ways.reduce((most, way) => (widthOf(way) > widthOf(most) ? way : most));

function widthOf(way: Way): number {
  const xs = way.flatMap((piece) => [placeAt(piece.way, 0).x, placeAt(piece.way, 0.5).x]);
  return Math.max(...xs) - Math.min(...xs);
}

function planOf(way: Way): readonly PlanPiece[] {
  return way.flatMap((piece, k) => {
    const next = way[(k + 1) % way.length]!;
    const turn = turnBetween(headingAt(piece.way, 1), headingAt(next.way, 0));
    const isSharp = turn > SMOOTH_RAD;
    return [...alongWay(piece), ...(isSharp ? aroundEnd(piece.way, turn) : [])];
  });
}

function alongWay({ way, roundsCorner }: WayPiece): readonly PlanPiece[] {
  if (roundsCorner) return [pieceOf('corner', way, 0, 1)];
  if (way.kind === 'line') return [pieceOf('line', way, 0, 1)];
  const count = Math.ceil(Math.abs(way.sweepRad) / spanOf(way.radiusMm));
  return Array.from({ length: count }, (_, k) => pieceOf('arc', way, k / count, (k + 1) / count));
}

/**
 * An ellipse that is out of round by a share e of its radius r strays from the circle through both ends and
 * the middle of a piece of it by at most 0.385 e r h^3, h half its span: the error of interpolating
 * cos 2t by a constant, cos t and sin t.
 */
function spanOf(radiusMm: number): number {
  const half = cubeRootOf(ARC_MM / (0.385 * DISTORTION * radiusMm));
  return Math.min(MOST_RAD, 2 * half);
}

function aroundEnd(way: Stretch, turn: number): readonly PlanPiece[] {
  const count = Math.ceil(turn / MOST_RAD);
  const from = headingAt(way, 1);
  const facing = (share: number): Facing => ({ at: way.to, toWall: wallAt(from + share * turn) });
  return Array.from({ length: count }, (_, k) => ({
    kind: 'round' as const,
    start: facing(k / count),
    middle: facing((k + 0.5) / count),
    end: facing((k + 1) / count),
  }));
}

function pieceOf(kind: PlanPiece['kind'], way: Stretch, from: number, to: number): PlanPiece {
  const facing = (share: number): Facing => ({
    at: placeAt(way, share),
    toWall: wallAt(headingAt(way, share)),
  });
  return { kind, start: facing(from), middle: facing((from + to) / 2), end: facing(to) };
}

/** The wall is on the right of the way that the axis runs. */
const wallAt = (heading: number): Point<'blank'> => ({
  x: sineOf(heading),
  y: -cosineOf(heading),
});

import { angleOf, arcTangentOf, cosineOf, hypotenuse, sineOf } from '../num/elementary.ts';
import type { Point } from './point.ts';

/**
 * A closed path in the blank's directions, counter-clockwise, mm: from each vertex to the next (the
 * last to the first) a straight line, or an arc whose `bulge` is the tangent of a quarter of its
 * included angle, positive counter-clockwise (the convention of DXF group 42).
 */
export type Path = readonly PathVertex[];

export interface PathVertex {
  readonly at: Point<'blank'>;
  readonly bulge: number;
}

/** One piece of a path: straight, or an arc of less than a full turn. */
export type Stretch =
  | { readonly kind: 'line'; readonly from: Point<'blank'>; readonly to: Point<'blank'> }
  | {
      readonly kind: 'arc';
      readonly from: Point<'blank'>;
      readonly to: Point<'blank'>;
      readonly centre: Point<'blank'>;
      readonly radiusMm: number;
      readonly startRad: number;
      /** Positive counter-clockwise. */
      readonly sweepRad: number;
    };

/** Bulge of a quarter turn: the tangent of a sixteenth of a full one. */
export const QUARTER_BULGE = 0.41421356237309503;

/**
 * Below this an arc is taken as straight: its sagitta, bulge / 2 of the chord, is then as small as what
 * rounding does to a centre that lies 1 / (4 bulge) chords away, so half an ulp over the bulge.
 */
const STRAIGHT_BULGE = Math.sqrt(Number.EPSILON / 2);

/** The pieces of a closed path in order; a piece without length is left out. */
export function stretchesOf(path: Path): readonly Stretch[] {
  return path.flatMap(({ at, bulge }, index) => {
    const to = path[(index + 1) % path.length]!.at;
    if (at.x === to.x && at.y === to.y) return [];
    return [
      Math.abs(bulge) < STRAIGHT_BULGE
        ? { kind: 'line' as const, from: at, to }
        : arcBetween(at, to, bulge),
    ];
  });
}

/** The arc from one place to another; `bulge` is not 0. */
export function arcBetween(
  from: Point<'blank'>,
  to: Point<'blank'>,
  bulge: number,
): Extract<Stretch, { kind: 'arc' }> {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  // The centre is this share of the chord to its left, seen from its middle.
  const left = (1 - bulge * bulge) / (4 * bulge);
  const centre = { x: (from.x + to.x) / 2 - left * dy, y: (from.y + to.y) / 2 + left * dx };
  return {
    kind: 'arc',
    from,
    to,
    centre,
    radiusMm: (hypotenuse(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    startRad: angleOf(from.y - centre.y, from.x - centre.x),
    sweepRad: 4 * arcTangentOf(bulge),
  };
}

/** Whether a direction from the centre, radians, is met by the arc; its ends count. */
export function sweepsOver(
  { startRad, sweepRad }: Extract<Stretch, { kind: 'arc' }>,
  directionRad: number,
): boolean {
  const full = 2 * Math.PI;
  const turned = (directionRad - startRad) * Math.sign(sweepRad);
  return ((turned % full) + full) % full <= Math.abs(sweepRad);
}

/** The same path the other way round. */
export const reversedPath = (path: Path): Path =>
  path.map((_, index) => {
    const n = path.length;
    return { at: path[(n - index) % n]!.at, bulge: -path[n - 1 - index]!.bulge };
  });

/** The path turned counter-clockwise about the origin, then moved. */
export function placedPath(path: Path, turnRad: number, by: Point<'blank'>): Path {
  const [c, s] = turnRad === 0 ? [1, 0] : [cosineOf(turnRad), sineOf(turnRad)];
  return path.map(({ at, bulge }) => ({
    at: { x: by.x + c * at.x - s * at.y, y: by.y + s * at.x + c * at.y },
    bulge,
  }));
}

import { tangentOf } from '../../num/elementary.ts';
import type { PathVertex } from '../../plane/path.ts';
import type { Point } from '../../plane/point.ts';

/** What a drawing holds under one name, mm, y up. */
export interface Pieces {
  readonly chains: readonly Chain[];
  /** What a person calls the whole: `layer rebate`, `element rebate`. */
  readonly called: string;
  readonly note: string | null;
}

/** A run of straight pieces and arcs, or a whole outline. */
export interface Chain {
  /** What it is and where it stands: `the LINE in line 120`. */
  readonly what: string;
  readonly vertices: readonly PathVertex[];
  /** Whether the last vertex is joined to the first. */
  readonly isClosed: boolean;
}

/** The bulge of an arc that turns by this much, radians, positive counter-clockwise. */
export const bulgeOf = (sweepRad: number): number => tangentOf(sweepRad / 4);

/** A circle as two half turns. */
export const circleVertices = (centre: Point<'blank'>, radiusMm: number): readonly PathVertex[] => [
  { at: { x: centre.x + radiusMm, y: centre.y }, bulge: 1 },
  { at: { x: centre.x - radiusMm, y: centre.y }, bulge: 1 },
];

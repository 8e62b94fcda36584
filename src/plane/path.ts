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

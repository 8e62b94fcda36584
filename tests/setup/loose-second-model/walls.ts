import { cross, dot, plus, turned, type XY } from '../second-model/vectors.ts';
import type { Found, Room } from './room.ts';

/** A wall of a nest on the machine, and what of the blank can touch it, as it lies unmoved. */
export interface WallFelt {
  /** Out of the nest, length 1. */
  readonly normal: XY;
  /** Nothing may be further along the normal, mm. */
  readonly limitMm: number;
  /** The place that touches first when the wall is seen along that normal by the unturned blank. */
  readonly touching: (normal: XY) => XY;
}

const ROUNDING_MM = 1e-11;
const PARALLEL = 1e-6;

interface Line {
  readonly normal: XY;
  readonly gapMm: number;
  /** How the gap runs with the turn, mm a radian. */
  readonly run: number;
}

/** The walls as lines that a move may not cross, the blank being turned about `pivot`. */
const linesAt = (walls: readonly WallFelt[], pivot: XY, turnRad: number): readonly Line[] =>
  walls.map(({ normal, limitMm, touching }) => {
    const arm = turned(plus(touching(turned(normal, -turnRad)), pivot, -1), turnRad);
    const gapMm = limitMm - dot(normal, pivot) - dot(normal, arm);
    return { normal, gapMm, run: -cross(arm, normal) };
  });

export const roomInWalls =
  (walls: readonly WallFelt[], pivot: XY): Room =>
  (turnRad, way) => {
    const lines = linesAt(walls, pivot, turnRad);
    const corners = lines.flatMap((one, j) =>
      lines.slice(j + 1).flatMap((other) => {
        const whole = cross(one.normal, other.normal);
        if (Math.abs(whole) < PARALLEL) return [];
        const move = {
          x: (one.gapMm * other.normal.y - other.gapMm * one.normal.y) / whole,
          y: (one.normal.x * other.gapMm - other.normal.x * one.gapMm) / whole,
        };
        const [a, b] = [cross(way, other.normal) / whole, cross(one.normal, way) / whole];
        return [{ move, gain: a * one.run + b * other.run }];
      }),
    );
    return corners.filter(({ move }) =>
      lines.every(({ normal, gapMm }) => dot(normal, move) <= gapMm + ROUNDING_MM),
    );
  };

/** Unturned, moved so that the squares of its distances from its place within each wall are least. */
export function inTheMiddle(walls: readonly WallFelt[], pivot: XY): Found {
  const lines = linesAt(walls, pivot, 0);
  const sum = (of: (line: Line) => number): number =>
    lines.reduce((total, line) => total + of(line), 0);
  const [xx, xy, yy] = [
    sum(({ normal }) => normal.x ** 2),
    sum(({ normal }) => normal.x * normal.y),
    sum(({ normal }) => normal.y ** 2),
  ];
  const [gx, gy] = [
    sum(({ normal, gapMm }) => normal.x * gapMm),
    sum(({ normal, gapMm }) => normal.y * gapMm),
  ];
  const whole = xx * yy - xy * xy;
  return { turnRad: 0, move: { x: (gx * yy - gy * xy) / whole, y: (gy * xx - gx * xy) / whole } };
}

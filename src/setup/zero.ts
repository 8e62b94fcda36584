import { invariant, unreachable } from '../num/invariant.ts';
import type { Job, ZeroXy } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Columns } from './columns.ts';
import type { Axis } from './deviation.ts';
import { EDGE_INDEX } from './edges.ts';
import type { Faces } from './faces.ts';
import { oppositeEdge } from './place.ts';
import { fenceIn } from '../job/located.ts';
import type { Placing } from './placing.ts';
import type { Pose } from './pose.ts';
import { inFrame, type SeatFrame } from './seat-frame.ts';
import { placingKey } from './touching.ts';

/** How far off the zero of one placing is on the machine, mm, layout directions. Filled each trial. */
export interface ZeroFound {
  dx: number;
  dy: number;
}

/** Where the machine's own errors are nil: X was found at `x` and at height `xAtY`, Y at `y`. */
export interface ZeroAnchor {
  readonly x: number;
  readonly xAtY: number;
  readonly y: number;
  /** Height above the bed at which X was touched, and what of it follows the blank's thickness. */
  readonly heightMm: number;
}

export interface ZeroFinder {
  readonly anchor: ZeroAnchor;
  readonly find: (
    draws: Float64Array,
    i: number,
    shape: Float64Array,
    pose: Pose,
    found: ZeroFound,
  ) => void;
}

/** How the zero of a placing is found. A kept zero has no finder of its own: `keptFrom` wraps the first's. */
export function zeroFinder(
  job: Job,
  placing: Placing,
  frame: SeatFrame,
  xy: Exclude<ZeroXy, { kind: 'kept' | 'hole' }>,
  faces: Faces,
  columns: Columns,
): ZeroFinder {
  const anchor = anchorOf(job, placing, xy);
  const touch = (axis: Axis, which: 1 | 2): number =>
    columns.of({ kind: 'zero-touch', placing: placingKey(placing.faceUp), axis, touch: which });
  switch (xy.kind) {
    case 'milled-stops':
    case 'dowels':
    case 'nest':
      return {
        anchor,
        find: (_draws, _i, _shape, _pose, found) => {
          found.dx = 0;
          found.dy = 0;
        },
      };
    case 'stops':
      return { anchor, find: onStops(frame, faces, xy.at, touch('x', 1), touch('y', 1)) };
    case 'edges':
      return { anchor, find: onEdges(placing, frame, xy.at, touch('x', 1), touch('y', 1)) };
    case 'middle': {
      const touches = {
        x: [touch('x', 1), touch('x', 2)],
        y: [touch('y', 1), touch('y', 2)],
      } as const;
      return { anchor, find: atMiddle(placing, frame, xy.at ?? placing.zero, touches) };
    }
    default:
      return unreachable(xy);
  }
}

function anchorOf(
  job: Job,
  placing: Placing,
  xy: Exclude<ZeroXy, { kind: 'kept' | 'hole' }>,
): ZeroAnchor {
  const { thickMm } = job.blank;
  const { x, y } = placing.zero;
  switch (xy.kind) {
    // Milled faces and their program share the machine's errors about one point: the front-up corner.
    case 'milled-stops':
      return { x, xAtY: y, y, heightMm: touchHeightMm(job) };
    // The same of a nest and its walls, and of dowels, which locate at half the thickness.
    case 'nest':
      return { x, xAtY: y, y, heightMm: touchHeightMm(job) };
    case 'dowels':
      return { x, xAtY: y, y, heightMm: 0 };
    case 'stops':
      return { x, xAtY: (xy.at ?? placing.zero).y, y, heightMm: touchHeightMm(job) };
    case 'edges':
    case 'middle':
      return { x, xAtY: (xy.at ?? placing.zero).y, y, heightMm: thickMm / 2 };
    default:
      return unreachable(xy);
  }
}

/** Height above the bed at which stops, or the walls of a nest, are felt by what finds the zero on them. */
function touchHeightMm(job: Job): number {
  if (job.locating === 'nest') return job.nest.wallMm;
  const band = fenceIn(job)?.band;
  invariant(band !== undefined, 'there are no stops to find a zero on');
  return band.kind === 'plain' ? band.heightMm : band.touchHeightMm;
}

/** Writes what was found along `a` and `b` as layout X and Y. */
export function asLayout(frame: SeatFrame, a: number, b: number, found: ZeroFound): void {
  found.dx = frame.along === 'x' ? frame.alongSign * a : frame.inwardSign * b;
  found.dy = frame.along === 'x' ? frame.inwardSign * b : frame.alongSign * a;
}

/** On the faces of the stops: the corner where they would meet, or each where it was touched. */
function onStops(
  frame: SeatFrame,
  faces: Faces,
  at: Point<'layout'> | null,
  touchX: number,
  touchY: number,
): ZeroFinder['find'] {
  const place = at === null ? null : inFrame(frame, at);
  const [touchA, touchB] = frame.along === 'x' ? [touchX, touchY] : [touchY, touchX];
  return (draws, i, _shape, _pose, found) => {
    const cornerB =
      (faces.fence + faces.fenceSlope * faces.side) / (1 - faces.fenceSlope * faces.sideSlope);
    const b = place === null ? cornerB : place.b;
    const cornerA = faces.side + faces.sideSlope * b;
    const a = place === null ? cornerA : place.a;
    const fenceB = faces.fence + faces.fenceSlope * a;
    asLayout(frame, cornerA + draws[touchA + i]!, fenceB + draws[touchB + i]!, found);
  };
}

/**
 * A place of the real edge on the machine: the coordinate across the edge where the edge crosses
 * the line `fixed`, sag included (taken at the nominal spot of the touch), bumps and bevel not.
 */
interface EdgeReader {
  readonly across: (shape: Float64Array, pose: Pose, fixed: number) => number;
}

/** Edges across `a` (left and right of the fence frame) read `a` at a fixed `b`; `far` is the edge away from the stop. */
function edgeAcrossA(
  edge: number,
  sign: 1 | -1,
  span: number,
  base: number,
  outward: 1 | -1,
): EdgeReader {
  const from = sign === 1 ? 0 : span;
  return {
    across: (shape, pose, fixed) => {
      const t = from + sign * fixed;
      const sag = shape[edge + 2]! * t * (shape[edge + 3]! - t);
      const slope = outward * shape[edge + 1]! * sign;
      const at = base + outward * (shape[edge]! + shape[edge + 1]! * from + sag);
      const b =
        (fixed - pose.sin * (at + pose.backA) - pose.cos * pose.backB) /
        (pose.cos + pose.sin * slope);
      return pose.cos * (at + slope * b + pose.backA) - pose.sin * (b + pose.backB);
    },
  };
}

/** Edges across `b` (at the fence and opposite) read `b` at a fixed `a`. */
function edgeAcrossB(
  edge: number,
  sign: 1 | -1,
  span: number,
  base: number,
  outward: 1 | -1,
): EdgeReader {
  const from = sign === 1 ? 0 : span;
  return {
    across: (shape, pose, fixed) => {
      const t = from + sign * fixed;
      const sag = shape[edge + 2]! * t * (shape[edge + 3]! - t);
      const slope = outward * shape[edge + 1]! * sign;
      const at = base + outward * (shape[edge]! + shape[edge + 1]! * from + sag);
      const a =
        (fixed + pose.sin * (at + pose.backB) - pose.cos * pose.backA) /
        (pose.cos - pose.sin * slope);
      return pose.sin * (a + pose.backA) + pose.cos * (at + slope * a + pose.backB);
    },
  };
}

/** On the blank's own two edges, at half thickness. Touch errors are positive away from the blank. */
function onEdges(
  placing: Placing,
  frame: SeatFrame,
  at: Point<'layout'> | null,
  touchX: number,
  touchY: number,
): ZeroFinder['find'] {
  const place = at === null ? null : inFrame(frame, at);
  const [touchA, touchB] = frame.along === 'x' ? [touchX, touchY] : [touchY, touchX];
  const side = edgeAcrossA(
    EDGE_INDEX[placing.end.edge],
    frame.blankInwardSign,
    frame.depthMm,
    0,
    -1,
  );
  const fence = edgeAcrossB(
    EDGE_INDEX[placing.base.edge],
    frame.blankAlongSign,
    frame.lengthMm,
    0,
    -1,
  );
  return (draws, i, shape, pose, found) => {
    let a: number;
    let b: number;
    if (place !== null) {
      a = side.across(shape, pose, place.b);
      b = fence.across(shape, pose, place.a);
    } else {
      [a, b] = cornerOf(placing, frame, shape, pose);
    }
    asLayout(frame, a - draws[touchA + i]!, b - draws[touchB + i]!, found);
  };
}

/** The corner where the two touched edges would meet, on the machine. */
function cornerOf(
  placing: Placing,
  frame: SeatFrame,
  shape: Float64Array,
  pose: Pose,
): [number, number] {
  const fence = EDGE_INDEX[placing.base.edge];
  const side = EDGE_INDEX[placing.end.edge];
  const fenceFrom = frame.blankAlongSign === 1 ? 0 : frame.lengthMm;
  const sideFrom = frame.blankInwardSign === 1 ? 0 : frame.depthMm;
  const kF = -shape[fence + 1]! * frame.blankAlongSign;
  const f0 = -(shape[fence]! + shape[fence + 1]! * fenceFrom);
  const kS = -shape[side + 1]! * frame.blankInwardSign;
  const s0 = -(shape[side]! + shape[side + 1]! * sideFrom);
  const a = (s0 + kS * f0) / (1 - kS * kF) + pose.backA;
  const b = f0 + kF * (a - pose.backA) + pose.backB;
  return [pose.cos * a - pose.sin * b, pose.sin * a + pose.cos * b];
}

/** Half-way between opposite edges, each touched once; the two touch errors are halved. */
function atMiddle(
  placing: Placing,
  frame: SeatFrame,
  at: Point<'layout'>,
  touches: { readonly x: readonly [number, number]; readonly y: readonly [number, number] },
): ZeroFinder['find'] {
  const place = inFrame(frame, at);
  const [touchA, touchB] = frame.along === 'x' ? [touches.x, touches.y] : [touches.y, touches.x];
  const { lengthMm, depthMm, blankInwardSign, blankAlongSign } = frame;
  const nearA = EDGE_INDEX[placing.end.edge];
  const nearB = EDGE_INDEX[placing.base.edge];
  const farA = EDGE_INDEX[oppositeEdge(placing.end.edge)];
  const farB = EDGE_INDEX[oppositeEdge(placing.base.edge)];
  // Nominal places are left out, so that a true set-up gives exactly 0.
  const side = edgeAcrossA(nearA, blankInwardSign, depthMm, 0, -1);
  const sideFar = edgeAcrossA(farA, blankInwardSign, depthMm, lengthMm, 1);
  const fence = edgeAcrossB(nearB, blankAlongSign, lengthMm, 0, -1);
  const fenceFar = edgeAcrossB(farB, blankAlongSign, lengthMm, depthMm, 1);
  return (draws, i, shape, pose, found) => {
    const a = side.across(shape, pose, place.b) + (sideFar.across(shape, pose, place.b) - lengthMm);
    const b =
      fence.across(shape, pose, place.a) + (fenceFar.across(shape, pose, place.a) - depthMm);
    const errorA = draws[touchA[1] + i]! - draws[touchA[0] + i]!;
    const errorB = draws[touchB[1] + i]! - draws[touchB[0] + i]!;
    asLayout(frame, (a + errorA) / 2, (b + errorB) / 2, found);
  };
}

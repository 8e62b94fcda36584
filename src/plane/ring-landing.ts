import { bend, turnCorner } from './ring-corner.ts';
import { stretchOf } from './ring-moved.ts';
import { newRing, reachOfRing, type Ring } from './ring.ts';
import type { PlanPiece, RingPlan } from './ring-plan.ts';
import { wallPlacer, type RingMove } from './wall-place.ts';

/** A ring that can be landed again and again; it lies nominally when it is made. */
export interface LandingRing {
  readonly ring: Ring;
  readonly land: (move: RingMove) => void;
}

const NOWHERE: RingMove = { off: new Float64Array(6), growsMm: 0, more: null };

/** Columns of numbers of a plan's pieces. */
interface Columns {
  readonly startX: Float64Array;
  readonly startY: Float64Array;
  readonly startWallX: Float64Array;
  readonly startWallY: Float64Array;
  readonly middleX: Float64Array;
  readonly middleY: Float64Array;
  readonly middleWallX: Float64Array;
  readonly middleWallY: Float64Array;
}

/** `at` is the feature's own place, from which the plan is drawn. */
export function landingRing(
  plan: RingPlan,
  at: { readonly x: number; readonly y: number },
): LandingRing {
  const pieces = plan.loops.flat();
  const ring = newRing(
    plan.loops.map((loop) => loop.length),
    plan.within,
    turningOf(plan),
  );
  const columns = columnsOf(pieces);
  const isLine = Uint8Array.from(pieces, ({ kind }) => (kind === 'line' ? 1 : 0));
  const corners = [...pieces.keys()].filter((k) => pieces[k]!.kind === 'corner');
  const middleX = new Float64Array(ring.count);
  const middleY = new Float64Array(ring.count);
  const wall = wallPlacer(plan.cutterMm, at);

  const land = (move: RingMove): void => {
    const { off, growsMm } = move;
    wall.load(move);
    for (let k = 0; k < ring.count; k++) {
      wall.place(
        columns.startX[k]!,
        columns.startY[k]!,
        columns.startWallX[k]!,
        columns.startWallY[k]!,
      );
      ring.x[k] = wall.x();
      ring.y[k] = wall.y();
      if (isLine[k] === 1) continue;
      wall.place(
        columns.middleX[k]!,
        columns.middleY[k]!,
        columns.middleWallX[k]!,
        columns.middleWallY[k]!,
      );
      middleX[k] = wall.x();
      middleY[k] = wall.y();
    }
    for (let k = 0; k < ring.count; k++)
      if (isLine[k] === 0) bend(ring, k, middleX[k]!, middleY[k]!);
    let corner = 0;
    ring.hasRoundedCorner = false;
    for (const k of corners) {
      const moved = turnCorner(ring, k, columns.middleWallX[k]!, columns.middleWallY[k]!);
      if (moved === null) ring.hasRoundedCorner = true;
      else corner = Math.max(corner, moved);
    }
    ring.moved.off.set(off);
    ring.moved.off[0]! -= off[2]! * at.x + off[3]! * at.y;
    ring.moved.off[1]! -= off[4]! * at.x + off[5]! * at.y;
    ring.moved.ownMm =
      2 * plan.cutterMm * stretchOf(off) + Math.abs(growsMm) + wall.mostMore() + corner;
  };
  land(NOWHERE);
  Object.assign(ring.moved.box, {
    lowX: -reachOfRing(ring, -1, 0),
    lowY: -reachOfRing(ring, 0, -1),
    highX: reachOfRing(ring, 1, 0),
    highY: reachOfRing(ring, 0, 1),
  });
  return { ring, land };
}

/** The pieces that turn, counter-clockwise, of a plan that bulges everywhere. */
function turningOf({ loops, within }: RingPlan): readonly number[] | null {
  const [loop, other] = loops;
  if (loop === undefined || other !== undefined) return null;
  if (!loop.every((piece) => piece.kind === 'line' || turnOf(piece) * within > 0)) return null;
  const turning = [...loop.keys()].filter((k) => loop[k]!.kind !== 'line');
  return within === 1 ? turning : turning.reverse();
}

/** Positive where a piece turns left. */
function turnOf({ start, middle }: PlanPiece): number {
  return start.toWall.x * middle.toWall.y - start.toWall.y * middle.toWall.x;
}

function columnsOf(pieces: readonly PlanPiece[]): Columns {
  const column = (of: (piece: PlanPiece) => number): Float64Array => Float64Array.from(pieces, of);
  return {
    startX: column(({ start }) => start.at.x),
    startY: column(({ start }) => start.at.y),
    startWallX: column(({ start }) => start.toWall.x),
    startWallY: column(({ start }) => start.toWall.y),
    middleX: column(({ middle }) => middle.at.x),
    middleY: column(({ middle }) => middle.at.y),
    middleWallX: column(({ middle }) => middle.toWall.x),
    middleWallY: column(({ middle }) => middle.toWall.y),
  };
}

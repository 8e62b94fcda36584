import type { Job } from '../job/job.ts';
import { intersectionOf } from '../plane/clip.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { layoutOnBed } from '../setup/place.ts';
import type { Placing, Side } from '../setup/placing.ts';
import type { Body } from '../sweep/body.ts';
import type { KeepClear } from '../sweep/keep-clear.ts';
import { pieceOf } from '../sweep/piece.ts';
import { holdMargin } from './candidates.ts';
import type { Vector } from './grip.ts';
import { locatorsOf } from './locators.ts';
import { holdNumbers } from './numbers.ts';
import type { Held } from './verdict.ts';
import { wedgeForceN } from './wedge.ts';

/** A wedge or cam that pushes the blank against what it touches on the other side; it holds nothing down. */
export interface Pusher {
  readonly body: Body;
  /** The side of the blank that it pushes at. */
  readonly side: Side;
  readonly at: Point<'layout'>;
  /** The way it pushes. */
  readonly normal: readonly [number, number];
  readonly newtons: number;
}

export interface Pushers {
  readonly placed: readonly Pusher[];
  /** Sides at which one is wished for and none can stand. */
  readonly noRoomAt: readonly Side[];
}

/** Across and behind the edge, mm: a wedge and the block that it is driven against. Estimate. */
const WIDE_MM = 30;
const DEEP_MM = 40;
/** Places that are tried between two contacts. */
const PLACES = 9;
/** How far beside a single contact a pusher may stand: further off it would turn the blank, mm. Estimate. */
const ASIDE_MM = [0, 5, -5, 10, -10];

/** What a thumb on a wedge presses with at least, N. Estimate. */
const pushN = (): number => {
  const { thumbN, slopeRad, friction } = holdNumbers.pusher;
  return wedgeForceN(thumbN, slopeRad, friction, friction);
};

/** Pushers opposite every face that stops make, clear of what stands and what moves; none when the job has none. */
export function pushersFor(
  job: Job,
  placing: Placing,
  clear: KeepClear,
  standing: readonly Body[],
): Pushers {
  if (job.hold.pusher !== 'towards-stops' || placing.contacts.length === 0)
    return { placed: [], noRoomAt: [] };
  const { stops } = locatorsOf(job, placing);
  const placed: Pusher[] = [];
  const noRoomAt: Side[] = [];
  for (const side of ['far', 'near', 'right', 'left'] as const) {
    const [nx, ny] = TOWARDS[side];
    const opposite = stops.filter(({ normal }) => normal[0] === -nx && normal[1] === -ny);
    if (opposite.length === 0) continue;
    const found = placesFor(job, placing, side, opposite).find(({ body }) =>
      stands(job, body, clear, [...standing, ...placed.map((other) => other.body)]),
    );
    if (found === undefined) noRoomAt.push(side);
    else placed.push(found);
  }
  return { placed, noRoomAt };
}

/** What a pusher adds to the contacts: its force at half the thickness, without friction. */
export const pushOf =
  (job: Job) =>
  ({ at, normal: [nx, ny], newtons }: Pusher): NonNullable<Held['pushes']>[number] => ({
    at: [at.x, at.y, job.blank.thickMm / 2],
    force: [nx * newtons, ny * newtons, 0],
  });

/** The way in which a pusher at a side pushes. */
const TOWARDS: Readonly<Record<Side, readonly [number, number]>> = {
  far: [0, -1],
  near: [0, 1],
  right: [-1, 0],
  left: [1, 0],
};

function placesFor(
  job: Job,
  placing: Placing,
  side: Side,
  opposite: readonly { readonly at: Vector }[],
): readonly Pusher[] {
  const { lowX, lowY, highX, highY } = pieceOf(job, placing).box;
  const isAlongX = side === 'far' || side === 'near';
  const along = opposite.map(({ at }) => (isAlongX ? at[0] : at[1]));
  const [low, high] = [Math.min(...along), Math.max(...along)];
  const middle = (low + high) / 2;
  const places =
    high - low < WIDE_MM
      ? ASIDE_MM.map((mm) => middle + mm)
      : Array.from({ length: PLACES }, (_, k) => low + ((k + 1) * (high - low)) / (PLACES + 1));
  const edge = { far: highY, near: lowY, right: highX, left: lowX }[side];
  return places
    .toSorted((a, b) => Math.abs(a - middle) - Math.abs(b - middle))
    .map((where) => {
      const at = isAlongX ? { x: where, y: edge } : { x: edge, y: where };
      return {
        body: {
          name: `pusher at the ${side} side`,
          outline: blockAt(at, TOWARDS[side]),
          lowMm: 0,
          highMm: job.blank.thickMm,
        },
        side,
        at,
        normal: TOWARDS[side],
        newtons: pushN(),
      };
    });
}

/** A rectangle behind the edge, wound counter-clockwise. */
function blockAt(
  { x, y }: Point<'layout'>,
  [nx, ny]: readonly [number, number],
): Outline<'layout'> {
  const half = WIDE_MM / 2;
  const corner = (across: number, behind: number): Point<'layout'> => ({
    x: x - behind * nx - across * ny,
    y: y - behind * ny + across * nx,
  });
  return [corner(half, DEEP_MM), corner(-half, DEEP_MM), corner(-half, 0), corner(half, 0)];
}

function stands(job: Job, body: Body, clear: KeepClear, others: readonly Body[]): boolean {
  const { xMm, yMm } = job.shop.bed.spoilboard;
  const isOnBed = body.outline.every((p) => {
    const { x, y } = layoutOnBed(job, p);
    return x >= 0 && y >= 0 && x <= xMm && y <= yMm;
  });
  return (
    isOnBed &&
    others.every(
      (other) =>
        other.lowMm >= body.highMm || intersectionOf([body.outline], [other.outline]).length === 0,
    ) &&
    clear([body], holdMargin).length === 0
  );
}

import type { Point } from '../plane/point.ts';
import { roundingMm, stopNumbers } from './numbers.ts';

/** Plan sizes of one piece, from its corner, mm. */
export interface PieceSize {
  /** Outer faces behind the contact lines of fence and side stop. */
  readonly fenceDepthMm: number;
  readonly sideDepthMm: number;
  /** Ends of the arms from the corner. */
  readonly fenceArmMm: number;
  readonly sideArmMm: number;
  readonly notchRadiusMm: number;
}

/** A place where a screw can go, in the piece's frame. */
export interface Seat {
  readonly at: Point<'corner'>;
  readonly insert: { readonly column: number; readonly row: number } | null;
}

export interface ScrewedPiece {
  readonly size: PieceSize;
  /** The one nearest the corner first. */
  readonly seats: readonly Seat[];
}

/** How far the arms may go. */
export type ArmLimits = Pick<PieceSize, 'fenceArmMm' | 'sideArmMm'>;

/**
 * Widens and lengthens a piece so that screws find inserts, and picks which; fewer than two seats
 * when there are none to find. `longest` bounds the arms.
 */
export function screwed(
  least: PieceSize,
  longest: ArmLimits,
  inserts: readonly Seat[],
  marginMm: number,
): ScrewedPiece {
  const widened = {
    ...least,
    fenceDepthMm: depthTo(
      inserts.map((seat) => -seat.at.y),
      least.fenceDepthMm,
      marginMm,
    ),
    sideDepthMm: depthTo(
      inserts.map((seat) => -seat.at.x),
      least.sideDepthMm,
      marginMm,
    ),
  };
  const fenceSeats = inserts.filter((seat) => seat.at.x > 0);
  const sideSeats = inserts.filter((seat) => seat.at.y > 0);
  const size = {
    ...widened,
    fenceArmMm: armTo(fenceSeats, widened, longest, 'fenceArmMm', marginMm),
    sideArmMm: armTo(sideSeats, widened, longest, 'sideArmMm', marginMm),
  };
  return { size, seats: spread(inserts.filter((seat) => holds(size, seat.at, marginMm))) };
}

/** Whether a hole that needs `marginMm` of body all round may stand at a place of the piece. */
export function holds(size: PieceSize, at: Point<'corner'>, marginMm: number): boolean {
  const backMm = stopNumbers.betweenBackMm;
  const within = (value: number, low: number, high: number): boolean =>
    value >= low + marginMm - roundingMm && value <= high - marginMm + roundingMm;
  const inFence =
    within(at.x, -size.sideDepthMm, size.fenceArmMm) && within(at.y, -size.fenceDepthMm, -backMm);
  const inSide =
    within(at.y, -size.fenceDepthMm, size.sideArmMm) && within(at.x, -size.sideDepthMm, -backMm);
  const toNotchMm = Math.hypot(at.x + backMm, at.y + backMm) - size.notchRadiusMm;
  return (inFence || inSide) && toNotchMm >= marginMm - roundingMm;
}

/** The depth that takes in the nearest line of inserts within reach, or the least depth. */
function depthTo(outsideMm: readonly number[], leastMm: number, marginMm: number): number {
  const first = outsideMm
    .filter((mm) => mm >= stopNumbers.betweenBackMm + marginMm - roundingMm)
    .filter((mm) => mm <= stopNumbers.reachMm)
    .reduce((low, mm) => Math.min(low, mm), Infinity);
  return Number.isFinite(first) ? Math.max(leastMm, first + marginMm) : leastMm;
}

/** The arm's length; an arm that holds no screw is lengthened to its first one, if that is allowed. */
function armTo(
  seats: readonly Seat[],
  size: PieceSize,
  longest: ArmLimits,
  arm: 'fenceArmMm' | 'sideArmMm',
  marginMm: number,
): number {
  const along = arm === 'fenceArmMm' ? 'x' : 'y';
  const limitMm = Math.min(longest[arm], size[arm] + stopNumbers.lengthenMm);
  const needs = seats
    .filter((seat) => holds({ ...size, [arm]: limitMm }, seat.at, marginMm))
    .map((seat) => seat.at[along] + marginMm);
  const first = needs.reduce((low, mm) => Math.min(low, mm), Infinity);
  return Number.isFinite(first) ? Math.max(size[arm], first) : size[arm];
}

/** The seat nearest the corner, the last on each arm, and what lies well apart between them. */
function spread(seats: readonly Seat[]): readonly Seat[] {
  const byNearness = seats.toSorted((a, b) => fromCorner(a) - fromCorner(b));
  const last = (of: (seat: Seat) => number): readonly Seat[] =>
    seats
      .filter((seat) => of(seat) > 0)
      .toSorted((a, b) => of(b) - of(a))
      .slice(0, 1);
  const ends = [
    ...byNearness.slice(0, 1),
    ...last((seat) => seat.at.x),
    ...last((seat) => seat.at.y),
  ];
  return byNearness.reduce(
    (kept, seat) => addedIfApart(kept, seat, stopNumbers.screwSpacingMm),
    ends.reduce<readonly Seat[]>(
      (kept, seat) => addedIfApart(kept, seat, stopNumbers.screwsLeastApartMm),
      [],
    ),
  );
}

const addedIfApart = (kept: readonly Seat[], seat: Seat, mm: number): readonly Seat[] =>
  kept.every((other) => apartMm(other, seat) >= mm) ? [...kept, seat] : kept;

const fromCorner = (seat: Seat): number => Math.hypot(seat.at.x, seat.at.y);
const apartMm = (a: Seat, b: Seat): number => Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y);

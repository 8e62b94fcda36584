import type { Point } from '../plane/point.ts';
import type { ScrewFit } from './screw-holes.ts';
import type { Seat } from './layout-of-screws.ts';

/** A hole through a piece, with a seat bored from its top; radii mm. */
export interface BoredHole {
  readonly at: Point<'corner'>;
  readonly radiusMm: number;
  readonly seatRadiusMm: number;
  /** 0: no seat. */
  readonly seatDeepMm: number;
  readonly along: 'x' | 'y';
  readonly travelMm: number;
}

/**
 * The holes for the screws of one piece. The one nearest the corner is round, the stop turns about
 * it while it is squared; the slots of the others run across the line from it, and so let it turn.
 */
export function boredHoles(seats: readonly Seat[], fit: ScrewFit): readonly BoredHole[] {
  return seats.map((seat, i) => {
    const pivot = seats[0]!.at;
    const across = Math.abs(seat.at.x - pivot.x) >= Math.abs(seat.at.y - pivot.y) ? 'y' : 'x';
    return {
      at: seat.at,
      radiusMm: fit.holeRadiusMm,
      seatRadiusMm: fit.seatRadiusMm,
      seatDeepMm: fit.counterboreMm,
      along: across,
      travelMm: i === 0 ? 0 : fit.travelMm,
    };
  });
}

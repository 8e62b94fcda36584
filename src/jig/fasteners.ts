import type { StopsJob } from '../job/job.ts';
import { moved } from '../plane/move.ts';
import { circleOutline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import type { Body } from '../sweep/body.ts';
import type { BoredHole } from './bored-hole.ts';
import { cornerInLayout } from './corner-frame.ts';
import { layoutOnBed } from '../setup/place.ts';
import type { Seat } from './layout-of-screws.ts';
import { stopNumbers, type Thread } from './numbers.ts';
import type { Piece } from './pieces.ts';
import type { ScrewFit } from './screw-holes.ts';
import type { StopHeights } from './stop-heights.ts';
import type { Pin, Screw } from './stop-part.ts';

/** A screw as the sheet needs it: on the layout and on the bed. */
export function screwOf(
  job: StopsJob,
  piece: Piece,
  seat: Seat,
  hole: BoredHole,
  thread: Thread,
): Screw {
  const at = cornerInLayout(piece.frame, seat.at);
  const fenceAxis = piece.frame.alongFence.axis;
  const otherAxis = fenceAxis === 'x' ? 'y' : 'x';
  const along = hole.along === 'x' ? fenceAxis : otherAxis;
  return {
    at,
    onBed: layoutOnBed(job, at),
    insert: seat.insert,
    thread,
    hole:
      hole.travelMm === 0 ? { kind: 'round' } : { kind: 'slot', along, travelMm: hole.travelMm },
    counterboreMm: hole.seatDeepMm,
  };
}

/** The head (or its washer) that stands on the stop, as a body to keep clear of. */
export function headOf(name: string, screw: Screw, heights: StopHeights, fit: ScrewFit): Body {
  return {
    name: `screw heads on the ${name}`,
    outline: moved(circleOutline(fit.headRadiusMm, stopNumbers.chordMm), screw.at),
    lowMm: heights.topMm,
    highMm: heights.topMm + fit.headProudMm,
  };
}

export function pinOf(job: StopsJob, piece: Piece, place: Point<'corner'>): Pin {
  const at = cornerInLayout(piece.frame, place);
  return { at, onBed: layoutOnBed(job, at), diameterMm: stopNumbers.pinDiameterMm };
}

export function pinHole(at: Point<'corner'>): BoredHole {
  const radiusMm = stopNumbers.pinDiameterMm / 2;
  return { at, radiusMm, seatRadiusMm: radiusMm, seatDeepMm: 0, along: 'x', travelMm: 0 };
}

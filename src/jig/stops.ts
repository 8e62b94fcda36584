import type { Job } from '../job/job.ts';
import { circleOutline } from '../plane/outline.ts';
import { moved } from '../plane/move.ts';
import type { Body } from '../sweep/body.ts';
import { lowestOver, type Placings } from '../sweep/clearances.ts';
import { cannot, mm, type Cannot } from './answer.ts';
import { boredHoles } from './bored-hole.ts';
import { cornerInLayout, layoutOnBed, outlineInLayout, towardsBlank } from './corner-frame.ts';
import { landsInLayout } from './lands.ts';
import { notesOn } from './notes.ts';
import { stopNumbers } from './numbers.ts';
import { profileOf } from './profile.ts';
import { screwFit, type ScrewFit } from './screw-holes.ts';
import { standing, type StandingPiece } from './standing.ts';
import { stopHeights, type StopHeights } from './stop-heights.ts';
import { stopOutline } from './stop-outline.ts';
import type { Screw, StopPart, StopsAnswer } from './stop-part.ts';

/** The corner stops that the job describes, standing where they belong; or why there are none. */
export function stopsOf(job: Job, placings: Placings): StopsAnswer {
  const withRim = stopsAt(job, placings, 'rim');
  if (withRim.kind === 'made' || job.stops.band.kind === 'plain') return withRim;
  // The rim above a narrow band only helps the print: go without where it is in the way.
  const without = stopsAt(job, placings, 'no rim');
  return without.kind === 'made' ? without : withRim;
}

function stopsAt(job: Job, placings: Placings, rim: 'rim' | 'no rim'): StopsAnswer {
  const heights = stopHeights(job, rim);
  if (heights.kind === 'cannot') return heights;
  const thread = job.shop.bed.inserts?.thread ?? 'M6';
  const fit = screwFit(thread, job.stops.made.kind, heights.value.topMm);
  const stood = standing(job, placings, heights.value.topMm, fit);
  if (stood.kind === 'cannot') return stood;
  const parts = stood.value.map((one) => partOf(job, one, heights.value, fit));
  const struck = parts
    .flatMap((part) => bodiesOf(part))
    .map((body) => strike(job, placings, body))
    .find((found) => found !== null);
  return struck ?? { kind: 'made', parts };
}

/** Everything of a part that others must keep clear of: itself and the heads that stand on it. */
export function bodiesOf(part: StopPart): readonly Body[] {
  return [part.body, ...part.heads];
}

function strike(job: Job, placings: Placings, body: Body): Cannot | null {
  const over = lowestOver(job, placings, body.outline);
  const roomMm = over === null ? Infinity : over.heightMm - body.highMm;
  if (over === null || roomMm >= stopNumbers.clearOverMm) return null;
  const shortMm = stopNumbers.clearOverMm - roomMm;
  return cannot(
    `the ${over.what} passes ${mm(over.heightMm)} above the bed over the ${body.name} (top at ${mm(body.highMm)}) while cutting ${over.feature}: ${mm(shortMm)} too low`,
    `a contact ${mm(shortMm)} lower, a longer stick-out, or a smaller dust shoe`,
  );
}

function partOf(job: Job, one: StandingPiece, heights: StopHeights, fit: ScrewFit): StopPart {
  const { piece, size } = one;
  const holes = boredHoles(one.seats, fit);
  const screws = one.seats.map((seat, i): Screw => {
    const at = cornerInLayout(piece.frame, seat.at);
    const hole = holes[i]!;
    const fenceAxis = piece.frame.alongFence.axis;
    const swapped = hole.along === 'x' ? fenceAxis : fenceAxis === 'x' ? 'y' : 'x';
    return {
      at,
      onBed: layoutOnBed(job, at),
      insert: seat.insert,
      thread: fit.thread,
      hole:
        hole.travelMm === 0
          ? { kind: 'round' }
          : { kind: 'slot', along: swapped, travelMm: hole.travelMm },
      counterboreMm: fit.counterboreMm,
    };
  });
  const made = job.stops.made;
  return {
    name: piece.name,
    body: {
      name: piece.name,
      outline: outlineInLayout(piece.frame, stopOutline(piece, size, 0, 0)),
      lowMm: 0,
      highMm: heights.topMm,
    },
    heads:
      fit.headProudMm === 0 ? [] : screws.map((screw) => headOf(piece.name, screw, heights, fit)),
    profile: profileOf(piece, size, heights, holes),
    lands: landsInLayout(piece),
    towardsBlank: towardsBlank(piece.frame),
    screws,
    band: heights.band,
    allowanceMm: heights.allowanceMm,
    milledWith: made.kind === 'milled-in-place' ? made.cutter.name : null,
    notes: notesOn(job, one, heights, fit),
  };
}

function headOf(name: string, screw: Screw, heights: StopHeights, fit: ScrewFit): Body {
  return {
    name: `screw head on the ${name}`,
    outline: moved(circleOutline(fit.headRadiusMm, stopNumbers.chordMm), screw.at),
    lowMm: heights.topMm,
    highMm: heights.topMm + fit.headProudMm,
  };
}

import type { StopsJob } from '../job/job.ts';
import type { Body } from '../sweep/body.ts';
import type { Placings } from '../sweep/clearances.ts';
import { cannot, made, type Step } from './answer.ts';
import { boredHoles } from './bored-hole.ts';
import { outlineInLayout, towardsBlank } from './corner-frame.ts';
import { landsInLayout } from './lands.ts';
import { headOf, pinHole, pinOf, screwOf } from './fasteners.ts';
import { noMillingRoom } from './milling-room.ts';
import { grooveHoles, noSteelButtons } from './steel-buttons.ts';
import { stopLabel } from './stop-label.ts';
import { notesOn } from './notes.ts';
import { pinPlaces } from './pins.ts';
import { profileOf } from './profile.ts';
import { remedyText, type Attempt } from './remedies.ts';
import { screwFit, type ScrewFit } from './screw-holes.ts';
import { standing, standingHere, type StandingPiece } from './standing.ts';
import { stopHeights, type StopHeights } from './stop-heights.ts';
import { finalFaces, stopOutline } from './stop-outline.ts';
import type { BarePart, StopPart, StopsAnswer } from './stop-part.ts';
import { strikeText, worstStrike } from './strike.ts';

/** The corner stops that the job describes, standing where they belong; or why there are none. */
export function stopsOf(job: StopsJob, placings: Placings): StopsAnswer {
  const tried = attempt(job, placings, standing);
  if (tried.kind === 'cannot') return tried;
  if (tried.kind === 'made') return { kind: 'made', parts: tried.parts.map(labelled) };
  const again = (other: StopsJob): Attempt => attempt(other, placings, standingHere);
  return cannot(strikeText(tried.strike), remedyText(job, tried.strike, again));
}

/** Letters take longer than the rest of a stop: only what is handed out gets them, no attempt does. */
const labelled = ({ label, ...part }: BarePart): StopPart => ({ ...part, words: label() });

function attempt(job: StopsJob, placings: Placings, stand: typeof standing): Attempt {
  const withRim = attemptAt(job, placings, stand, 'rim');
  if (withRim.kind === 'made' || job.stops.band.kind === 'plain') return withRim;
  // The rim above a narrow band only helps the print: go without where it is in the way.
  return attemptAt(job, placings, stand, 'no rim');
}

function attemptAt(
  job: StopsJob,
  placings: Placings,
  stand: typeof standing,
  rim: 'rim' | 'no rim',
): Attempt {
  const pins = noSteelButtons(job);
  if (pins !== null) return pins;
  const heights = stopHeights(job, rim);
  if (heights.kind === 'cannot') return heights;
  const thread = job.shop.bed.inserts?.thread ?? 'M6';
  const fit = screwFit(thread, job.stops.made.kind, heights.value.topMm);
  const stood = stand(job, placings, heights.value.topMm, fit);
  if (stood.kind === 'cannot') return stood;
  const parts: BarePart[] = [];
  for (const one of stood.value) {
    const part = partOf(job, one, heights.value, fit);
    if (part.kind === 'cannot') return part;
    const made = job.stops.made;
    const room =
      made.kind === 'milled-in-place' ? noMillingRoom(job, part.value, made.cutter) : null;
    if (room !== null) return room;
    parts.push(part.value);
  }
  const strike = worstStrike(job, placings, parts.flatMap(bodiesOf));
  return strike === null ? { kind: 'made', parts } : { kind: 'struck', strike };
}

/** Everything of a part that others must keep clear of: itself and the heads that stand on it. */
export function bodiesOf(part: BarePart | StopPart): readonly Body[] {
  return [part.body, ...part.heads];
}

function partOf(
  job: StopsJob,
  one: StandingPiece,
  heights: StopHeights,
  fit: ScrewFit,
): Step<BarePart> {
  const { piece, size } = one;
  const holes = boredHoles(one.seats, fit);
  const screws = one.seats.map((seat, i) => screwOf(job, piece, seat, holes[i]!, fit.thread));
  const onPins = job.stops.made.kind === 'on-bed-pins';
  const grooves = grooveHoles(piece);
  const pinned = onPins ? pinPlaces(size, [...holes, ...grooves]) : [];
  if (onPins && pinned.length < 2)
    return cannot(
      `the ${piece.name}, has no room for two pins between its screws`,
      'a place of fence-touch or side-touch further from the corner, or inserts further apart',
    );
  const how = job.stops.made;
  const { name } = piece;
  const proudMm = fit.headProudMm;
  return made({
    name,
    body: {
      name,
      outline: outlineInLayout(piece.frame, stopOutline(piece, size, finalFaces)),
      lowMm: 0,
      highMm: heights.topMm,
    },
    heads: proudMm === 0 ? [] : screws.map((screw) => headOf(name, screw, heights, fit)),
    profile: profileOf(piece, size, heights, [...holes, ...pinned.map(pinHole)]),
    label: () => stopLabel(job, piece, size, [...holes, ...grooves, ...pinned.map(pinHole)]),
    lands: landsInLayout(piece),
    towardsBlank: towardsBlank(piece.frame),
    screws,
    pins: pinned.map((place) => pinOf(job, piece, place)),
    band: heights.band,
    allowanceMm: heights.allowanceMm,
    milledWith: how.kind === 'milled-in-place' ? how.cutter.name : null,
    notes: notesOn(job, one, heights, fit),
  });
}

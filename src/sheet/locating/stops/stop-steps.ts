import type { Cutter, StopsJob } from '../../../job/job.ts';
import { unreachable } from '../../../num/invariant.ts';
import { oppositeEdge } from '../../../setup/place.ts';
import type { Placing } from '../../../setup/placing.ts';
import { stopLetter } from './stop-badges.ts';
import type { Html } from '../../html.ts';
import { markup } from '../../html.ts';
import { FINISH_MM } from '../../../jig/program/land-runs.ts';
import { millingRuns } from './milling-runs.ts';
import { millingTable } from './milling-table.ts';
import { sizesStepNumber } from '../../prepare-steps.ts';
import type { StopsInput } from '../../sheet-input.ts';
import { hasTwoSideStops, sideStopName } from './side-stop.ts';
import { printStops } from './stop-making.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { stopNotes } from './stop-notes.ts';
import { lengthText, unitText } from '../../words.ts';

/** Fixing the stops to the bed in the way the job says they are made, before the first placing. */
export function stopSteps(input: StopsInput, placing: Placing): Step[] {
  const { job } = input;
  const made = job.stops.made;
  const oneCounts = onlyOneSideStop(input, placing);
  switch (made.kind) {
    case 'milled-in-place':
      return [screwDown(input), ...millStops(input, made.cutter), ...oneCounts];
    case 'set-by-hand':
      return [screwDown(input), ...setByHand(job, placing), ...oneCounts];
    case 'on-bed-pins':
      return [
        step(
          markup`Push ${letters(input)} onto the pins in the bed, down until nothing rocks, then tighten the screws. ${standsAt(job)}${notesOf(input)}`,
        ),
        ...oneCounts,
      ];
    default:
      return unreachable(made);
  }
}

function letters({ stops }: StopsInput): string {
  const named = stops.map((stop, i) => `${stopLetter(i)} (${stop.body.name})`);
  return `the ${named.length === 1 ? 'stop' : 'stops'} ${named.join(' and ')}`;
}

function screwDown(input: StopsInput): Step {
  return step(
    markup`Screw ${letters(input)} to the bed where the picture shows ${input.stops.length === 1 ? 'it' : 'them'}. ${standsAt(input.job)}${notesOf(input)}`,
  );
}

/** What the maker of each stop has to say about it. */
function notesOf({ job, stops }: StopsInput): Html {
  const notes = stops.map(
    (stop, i) =>
      markup`<li><b class="letter">${stopLetter(i)}</b> ${stopNotes(job, stop).join(' ')}</li>`,
  );
  return markup`<ul>${notes}</ul>`;
}

function standsAt(job: StopsJob): Html {
  const { value, origin } = job.onBed;
  const units = job.shop.units;
  const assumed = origin.kind === 'assumed' ? ' (assumed, the job does not say)' : '';
  return markup`The ${job.stops.corner.frontUp} corner of the blank comes to lie at X ${lengthText(value.x, units)}, Y ${lengthText(value.y, units)} from the near-left corner of the bed${assumed}.`;
}

function millStops({ job, stops }: StopsInput, cutter: Cutter): Step[] {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const allowance = Math.max(0, ...stops.map((stop) => stop.allowanceMm));
  const full = allowance === 0 ? 'left too full' : `${size(allowance)} too full`;
  const corner = job.stops.corner.frontUp;
  return [
    step(
      markup`No blank yet. The contact faces are ${full} on purpose. Set X and Y zero once, by eye, at the ${corner} corner of the blank in the picture, so that every contact face has something to come off. Set Z zero on the <b>bed</b>.`,
    ),
    step(
      markup`<b>Mill the contact faces</b> from this zero with ${cutter.name}, along the runs below: first all but ${size(FINISH_MM)}, then the last ${size(FINISH_MM)} as a climb cut, then that pass once more without feeding in. The table says where the <b>centre</b> of the cutter runs, half its ${size(cutter.diameterMm)} off the face; from → to is the way that climbs with a spindle that turns clockwise seen from above. <b>You cut next to screws and clamps:</b> run each line once with the cutter raised, and keep the cutter clear of every other stop. ${millingTable(job, millingRuns(job, stops, cutter))}`,
    ),
    step(
      markup`<b>From now on do not touch X and Y zero, the screws of the stops, or the power switch</b>, but where this sheet says so: faces and zero now belong together.`,
    ),
  ];
}

function setByHand(job: StopsJob, placing: Placing): Step[] {
  const unit = unitText(job.shop.units);
  const along = placing.base.side === 'near' || placing.base.side === 'far' ? 'X' : 'Y';
  const mark = mayDrawBack(job)
    ? ' Mark its place on the bed, so that it can be drawn back and come again.'
    : '';
  const second = hasTwoSideStops(job)
    ? [
        step(
          markup`Set the second side stop ${lengthText(apartMm(job, placing), job.shop.units)} from the first, face to face, with a bar or a rule of known length.${mark}`,
          { label: 'face to face', unit },
        ),
      ]
    : [];
  return [
    step(
      markup`Set the fence along the machine's ${along}: jog a pointer along its face from end to end and tap the fence until the gap stays the same. Tighten and look again.`,
      { label: 'gap, one end', unit },
      { label: 'other end', unit },
    ),
    step(markup`Check with a square that the face of the side stop is square to the fence.`, {
      label: 'gap at the blade end',
      unit,
    }),
    ...second,
  ];
}

/** With a stop at each end of it a longer blank does not go in between the two. */
function onlyOneSideStop(input: StopsInput, placing: Placing): Step[] {
  const { job } = input;
  if (!hasTwoSideStops(job)) return [];
  const other = placing.sideStop === 'first' ? 'second' : 'first';
  const aside = mayDrawBack(job)
    ? markup` Or mark the place of the ${other} one on the bed, draw it back, and put it back to its mark before the blank is turned over.`
    : markup``;
  return [
    step(
      markup`In this placing only ${sideStopName(job, placing)} counts. The side stops stand ${lengthText(apartMm(job, placing), job.shop.units)} apart. A longer blank does not go in between: measure it (step ${sizesStepNumber([printStops(input)])}); if it is longer, ${shortenWords(job, placing)}, or write its length as the size and build again.${aside} Never force it, never shift a stop that was milled.`,
    ),
  ];
}

/** Which of two side stops counts once the blank is turned. */
export function otherSideStop(job: StopsJob, first: Placing, second: Placing): Step[] {
  if (!hasTwoSideStops(job)) return [];
  return [
    step(
      markup`From here on only ${sideStopName(job, second)} counts: it must stand in its place${mayDrawBack(job) ? ', at its mark' : ''}, and the blank must lie free of the ${first.sideStop ?? 'other'} one. Never force it in between the two.`,
    ),
  ];
}

/** Where zero is touched again after the turn, nothing hangs on the exact place of a stop set by hand. */
function mayDrawBack(job: StopsJob): boolean {
  const { frontUp, backUp } = job.zero;
  const again = job.first === 'front' ? backUp : frontUp;
  const isTouched = again.xy.kind !== 'kept' && again.xy.kind !== 'milled-stops';
  return hasTwoSideStops(job) && job.stops.made.kind === 'set-by-hand' && isTouched;
}

function apartMm(job: StopsJob, placing: Placing): number {
  const isAlongX = placing.base.side === 'near' || placing.base.side === 'far';
  return isAlongX ? job.blank.widthMm : job.blank.heightMm;
}

/** The edge across from the one that meets the side stop is free, but somebody may have marked it too. */
function shortenWords(job: StopsJob, placing: Placing): string {
  const free = oppositeEdge(placing.end.edge);
  return job.blank.marked.includes(free)
    ? `shorten it at its ${free} edge`
    : `shorten it at the edge that is not marked (the ${free} one)`;
}

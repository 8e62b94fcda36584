import type { Job } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { Placing } from '../setup/placing.ts';
import { stopLetter } from './badges.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { SheetInput } from './sheet-input.ts';
import { sideStopName } from './side-words.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { lengthText, unitText } from './words.ts';

/** Fixing the stops to the bed in the way the job says they are made, before the first placing. */
export function stopSteps(input: SheetInput, placing: Placing): Step[] {
  const { job } = input;
  const made = job.stops.made;
  switch (made.kind) {
    case 'milled-in-place':
      return [
        screwDown(input),
        ...millStops(input, made.cutter.name),
        ...onlyOneSideStop(job, placing),
      ];
    case 'set-by-hand':
      return [screwDown(input), ...setByHand(job, placing), ...onlyOneSideStop(job, placing)];
    case 'on-bed-pins':
      return [
        step(
          markup`Push ${letters(input)} onto the pins in the bed, down until nothing rocks, then tighten the screws. ${standsAt(job)}${notesOf(input)}`,
        ),
        ...onlyOneSideStop(job, placing),
      ];
    default:
      return unreachable(made);
  }
}

export function hasTwoSideStops(job: Job): boolean {
  return job.stops.corner.frontUp !== job.stops.corner.backUp;
}

function letters({ stops }: SheetInput): string {
  const named = stops.map((stop, i) => `${stopLetter(i)} (${stop.body.name})`);
  return `the ${named.length === 1 ? 'stop' : 'stops'} ${named.join(' and ')}`;
}

function screwDown(input: SheetInput): Step {
  return step(
    markup`Screw ${letters(input)} to the bed where the picture shows them. ${standsAt(input.job)}${notesOf(input)}`,
  );
}

/** What the maker of each stop has to say about it. */
function notesOf({ stops }: SheetInput): Html {
  const notes = stops.map(
    (stop, i) => markup`<li><b class="letter">${stopLetter(i)}</b> ${stop.notes.join(' ')}</li>`,
  );
  return stops.every((stop) => stop.notes.length === 0) ? markup`` : markup`<ul>${notes}</ul>`;
}

function standsAt(job: Job): Html {
  const { value, origin } = job.onBed;
  const units = job.shop.units;
  const assumed = origin.kind === 'assumed' ? ' (assumed, the job does not say)' : '';
  return markup`The ${job.stops.corner.frontUp} corner of the blank comes to lie at X ${lengthText(value.x, units)}, Y ${lengthText(value.y, units)} from the near-left corner of the bed${assumed}.`;
}

function millStops({ job, stops }: SheetInput, cutter: string): Step[] {
  const units = job.shop.units;
  const allowance = Math.max(0, ...stops.map((stop) => stop.allowanceMm));
  const stock =
    allowance === 0
      ? markup`Their contact faces are left too full on purpose.`
      : markup`Their contact faces are ${lengthText(allowance, units)} too full on purpose.`;
  return [
    step(
      markup`No blank yet. ${stock} Set X and Y zero once, by eye, at the ZERO of the picture, so that every contact face has something to come off. <b>Mill the contact faces</b> from this zero with ${cutter}: climb cut, a light last pass, and that pass once more without feeding in.`,
    ),
    step(
      markup`<b>From now on do not touch X and Y zero, the screws of the stops, or the power switch</b>, but where this sheet says so: faces and zero now belong together.`,
    ),
  ];
}

function setByHand(job: Job, placing: Placing): Step[] {
  const unit = unitText(job.shop.units);
  const along = placing.fence.side === 'near' || placing.fence.side === 'far' ? 'X' : 'Y';
  const spacing = along === 'X' ? job.blank.widthMm : job.blank.heightMm;
  const second = hasTwoSideStops(job)
    ? [
        step(
          markup`Set the second side stop ${lengthText(spacing, job.shop.units)} from the first, face to face, with a bar or a rule of known length. Mark its place, so that it can be drawn back and come again.`,
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

/** With a stop at each end the blank would jam between the two. */
function onlyOneSideStop(job: Job, placing: Placing): Step[] {
  if (!hasTwoSideStops(job)) return [];
  const other = placing.sideStop.which === 'first' ? 'second' : 'first';
  return [
    step(
      markup`In this placing only ${sideStopName(job, placing)} counts. The blank must lie free of the ${other} one: never force it in between the two. If it jams, it is longer than they stand apart; draw the ${other} one back.`,
    ),
  ];
}

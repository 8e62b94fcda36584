import type { StopsJob, Zero, ZeroZ } from '../job/job.ts';
import type { Placing, Side } from '../setup/placing.ts';
import { cutSteps } from './cut-steps.ts';
import { markup } from './html.ts';
import { acrossFrom, cornerAt, inLayout, markedCorner } from './places.ts';
import { programWords } from './place-words.ts';
import { sideStopName } from './side-words.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { zeroOf } from './touch-places.ts';
import { lengthText, unitText } from './words.ts';
import { noteZero, zeroAfterLaying, zeroBeforeLaying } from './zero-xy-steps.ts';
import { staysInReach, zAfterLaying, zBeforeLaying } from './zero-z-steps.ts';

/** One placing at the machine, from its zero to the last look before the clamps come off. */
export function placingSteps(job: StopsJob, placing: Placing, next: Zero | null): Step[] {
  const zero = zeroOf(job, placing);
  const isFirst = placing.order === 'first';
  return [
    ...zeroBeforeLaying(job, placing, zero.xy),
    ...zBeforeLaying(job, placing, zero),
    ...seatSteps(job, placing),
    ...zeroAfterLaying(job, placing, zero.xy),
    ...(isFirst ? noteZero(job, next) : []),
    checkMark(job, placing),
    ...zAfterLaying(job, placing, zero.z),
    step(
      markup`Run the program once with the cutter raised clear of everything. Do cutter, nut and dust shoe pass every stop and every clamp?`,
    ),
    ...cutSteps(job, placing.faceUp),
    ...lastLook(job, placing, zero.z),
  ];
}

function seatSteps(job: StopsJob, placing: Placing): Step[] {
  const units = job.shop.units;
  const mark = cornerAt(job, inLayout(job, placing, markedCorner(job)));
  return [
    step(markup`Blow and brush bed, stops and blank clean, the corner above all.`),
    step(
      markup`Lay the blank down, <b>${placing.faceUp.toUpperCase()} up, M at the ${mark}</b>. First press its ${placing.base.edge} edge against the fence on the ${placing.base.side} side; then, keeping it pressed, slide it ${TOWARDS[placing.end.side]} until its ${placing.end.edge} edge touches ${sideStopName(job, placing)}.`,
    ),
    hold(job, placing),
    step(
      markup`Try a ${lengthText(units === 'inch' ? 0.0508 : 0.05, units)} feeler at the black wedges of the picture. ${feelerWords(placing)} If it goes in where it must not, take the blank out, clean, and lay it again.`,
    ),
  ];
}

/** Two buttons are both felt; of an arm on the side, the blank touches one end, as its edge will have it. */
function feelerWords(placing: Placing): string {
  const armOnSide = placing.contacts.some(
    ({ face, kind }) => face === 'side' && kind === 'arm-end',
  );
  const armOnFence = placing.contacts.some(
    ({ face, kind }) => face === 'fence' && kind === 'arm-end',
  );
  const fence = armOnFence
    ? 'Along the fence it must not go in at both ends at once.'
    : 'At the fence it must not go in at either.';
  const side = armOnSide
    ? 'Along the side stop it must not go in at one end at least.'
    : 'At the side stop it must not go in.';
  return `${fence} ${side}`;
}

const TOWARDS: Readonly<Record<Side, string>> = {
  near: 'towards you',
  far: 'away from you',
  left: 'to the left',
  right: 'to the right',
};

function hold(job: StopsJob, placing: Placing): Step {
  const corner = cornerOf(placing);
  const away = acrossFrom(corner);
  if (job.hold.pusher === 'towards-stops')
    return step(
      markup`Push with the pusher from the ${away} towards the stops at the ${corner}, then tighten the clamps a little each, crosswise. A clamp's bolt must not drag the blank.`,
    );
  return step(
    markup`Press by hand from the ${away} towards the stops at the ${corner} while you tighten the clamps a little each, crosswise, watching that none drags the blank off the stops.`,
  );
}

function cornerOf({ base, end }: Placing): ReturnType<typeof acrossFrom> {
  const sides = [base.side, end.side];
  const far = sides.includes('far') ? 'far' : 'near';
  return sides.includes('right') ? `${far}-right` : `${far}-left`;
}

/** A wrong turn, a wrong zero and a wrong sign all show in this one look. */
function checkMark(job: StopsJob, placing: Placing): Step {
  const at = inLayout(job, placing, markedCorner(job));
  return step(
    markup`Spindle still, cutter above everything: jog to <b>${programWords(job, placing, at)}</b>. The cutter must stand over the corner of the blank that has the M, the ${cornerAt(job, at)}. If not: stop, and find out why.`,
  );
}

function lastLook(job: StopsJob, placing: Placing, z: ZeroZ): Step[] {
  const units = job.shop.units;
  const unit = unitText(units);
  const within = lengthText(units === 'inch' ? 0.0508 : 0.05, units);
  const touchZ = staysInReach(job, placing, z);
  const at = inLayout(job, placing, markedCorner(job));
  return [
    step(
      markup`Before a clamp comes off: spindle still, raise the cutter above everything, and jog to <b>${programWords(job, placing, at)}</b> once more. It must stand over the M corner as it did before. A display alone does not show lost steps.`,
    ),
    ...(touchZ
      ? [
          step(
            markup`Touch Z again where you touched it: it must read what it read, within ±${within}.`,
            { label: 'Z', unit },
          ),
        ]
      : []),
    step(
      markup`Wait until the spindle stands still. Take loose pieces away, vacuum, then take the blank out.`,
    ),
  ];
}

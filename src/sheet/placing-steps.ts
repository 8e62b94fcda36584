import type { Job, Zero, ZeroZ } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import { cutSteps } from './cut-steps.ts';
import { dialInSteps } from './dial-in-steps.ts';
import { markup } from './html.ts';
import { markOn } from './locating/piece.ts';
import { pieceOf } from '../sweep/piece.ts';
import type { Located } from './locating/way.ts';
import { programWords } from './place-words.ts';
import { markCorner } from './places.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { zeroOf } from './touch-places.ts';
import { lengthText, unitText } from './words.ts';
import { noteZero, zeroAfterLaying, zeroBeforeLaying } from './zero-xy-steps.ts';
import { staysInReach, zAfterLaying, zBeforeLaying } from './zero-z-steps.ts';

/** One placing at the machine, from its zero to the last look before the clamps come off. */
export function placingSteps(
  job: Job,
  placing: Placing,
  located: Located,
  next: Zero | null,
  holding: readonly Step[],
): Step[] {
  const zero = zeroOf(job, placing);
  const isFirst = placing.order === 'first';
  return [
    ...located.making,
    ...zeroBeforeLaying(job, placing, zero.xy),
    ...zBeforeLaying(job, placing, located, zero),
    ...located.laying,
    ...holding,
    ...zeroAfterLaying(job, placing, located, zero.xy),
    ...(isFirst ? noteZero(job, next) : dialInSteps(job)),
    checkMark(job, placing),
    ...located.drilling,
    ...zAfterLaying(job, placing, located, zero.z),
    step(
      markup`Run the program once with the cutter raised clear of everything. Do cutter, nut and dust shoe pass ${located.passing} and every clamp?`,
    ),
    ...cutSteps(job, placing.faceUp),
    ...lastLook(job, placing, located, zero.z),
  ];
}

/** A wrong turn, a wrong zero and a wrong sign all show in this one look. */
function checkMark(job: Job, placing: Placing): Step {
  const at = markOn(job, placing);
  const over =
    pieceOf(job, placing).name === 'part'
      ? 'the edge of the part beside the M'
      : 'the corner of the blank that has the M';
  return step(
    markup`Spindle still, cutter above everything: jog to <b>${programWords(job, placing, at)}</b>. The cutter must stand over ${over}, the ${markCorner(job, placing)}. If not: stop, and find out why.`,
  );
}

function lastLook(job: Job, placing: Placing, located: Located, z: ZeroZ): Step[] {
  const units = job.shop.units;
  const unit = unitText(units);
  const within = lengthText(units === 'inch' ? 0.0508 : 0.05, units);
  const touchZ = staysInReach(job, placing, located, z);
  const at = markOn(job, placing);
  return [
    step(
      markup`Before a clamp comes off: spindle still, raise the cutter above everything, and jog to <b>${programWords(job, placing, at)}</b> once more. It must stand over the ${pieceOf(job, placing).name === 'part' ? 'edge beside the M' : 'M corner'} as it did before. A display alone does not show lost steps.`,
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
      markup`Wait until the spindle stands still. Take loose pieces away, vacuum, then ${located.lifting}.`,
    ),
  ];
}

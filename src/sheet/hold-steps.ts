import { isGood, type PlacingPlan } from '../hold/placing-plan.ts';
import type { Job } from '../job/job.ts';
import { markup } from './html.ts';
import type { Told } from './sheet-input.ts';
import { step, type Step } from './step.ts';
import { lengthText } from './words.ts';

/** Putting on what holds, after the blank is laid; and, before, that it is not settled when it is not. */
export function holdSteps(job: Job, { plan }: Told['hold'], face: 'front' | 'back'): Step[] {
  if (plan === null) return [];
  const own = face === 'front' ? plan.frontUp : plan.backUp;
  if (own.reach === null) return [];
  return [...notSettled(own), ...filled(own), ...clamped(own), ...screwed(job, own)];
}

const notSettled = (plan: PlacingPlan): Step[] =>
  isGood(plan)
    ? []
    : [
        step(
          markup`<b>Do not cut yet:</b> how this placing is held is not settled. Put right what “Holding down” lists first.`,
        ),
      ];

const filled = ({ isFilled }: PlacingPlan): Step[] =>
  isFilled ? [step(markup`Lay the fillers in the pockets underneath, level with the face.`)] : [];

function clamped({ layout }: PlacingPlan): Step[] {
  const straps = layout?.straps ?? [];
  if (straps.length === 0) return [];
  const list = straps
    .map(
      ({ bodies, side, strap }) => `${bodies[0]!.name} over the ${side} side, ${strap.torqueNm} Nm`,
    )
    .join('; ');
  return [
    step(
      markup`Clamp as drawn under “Holding down” (bolts counted from the near-left corner of the bed): ${list}. Heels level with the blank or a little higher; tighten in turn, a little each time. Does the blank still lie where it was?`,
    ),
  ];
}

function screwed(job: Job, { screws }: PlacingPlan): Step[] {
  if (screws.length === 0) return [];
  const { units } = job.shop;
  const list = screws
    .map(
      ({ name, inBlank }) =>
        `${name} at ${lengthText(inBlank.x, units)}, ${lengthText(inBlank.y, units)}`,
    )
    .join('; ');
  return [
    step(
      markup`Screws through the waste, lead holes bored first (places on the blank as seen from the front): ${list}.`,
    ),
  ];
}

import type { Placing } from '../../../setup/placing.ts';
import { cornerAt, frontUpCorner } from '../../../setup/place.ts';
import { markup } from '../../html.ts';
import { onBedWords } from '../../place-words.ts';
import { markCorner } from '../../places.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { lengthText } from '../../words.ts';
import { STUCK } from '../dowels/dowel-laying.ts';
import type { DowelSet } from '../dowels/dowel-set.ts';
import { overWords } from '../dowels/dowel-words.ts';
import { takeUpWords } from '../take-up.ts';

/** Before there is a hole: at the fence, anywhere along it. */
export function layAtFence(set: DowelSet, placing: Placing): Step[] {
  const { job } = set;
  const corner = frontUpCorner(job);
  return [
    step(markup`Blow and brush bed, fence and blank clean.`),
    step(
      markup`Lay the blank down, <b>${placing.faceUp.toUpperCase()} up, M at the ${markCorner(job, placing)}</b>, its ${corner} corner at about ${onBedWords(job, cornerAt(job, corner))} from the near-left corner of the bed, and press its ${placing.base.edge} edge against the fence on the ${placing.base.side} side. Along the fence its exact place does not matter: zero is touched on it below.`,
    ),
    clamp(placing, 'This one clamping lasts for the drilling and for every cut of this face.'),
    feel(set, placing),
  ];
}

/** With its hole on the dowel and its edge at the fence. */
export function layOnDowelAtFence(set: DowelSet, placing: Placing): Step[] {
  const { job, holes } = set;
  return [
    step(markup`Blow and brush bed, fence, dowel and blank clean; blow the hole out.`),
    step(
      markup`Hold the blank level, <b>${placing.faceUp.toUpperCase()} up, M at the ${markCorner(job, placing)}</b>, ${overWords(set, placing)}, its ${placing.base.edge} edge towards the fence on the ${placing.base.side} side. Press it straight down by hand until it lies on the bed all over. ${STUCK}`,
    ),
    step(
      markup`Press its ${placing.base.edge} edge against the fence, and keep it pressed. ${takeUpWords(holes.takeUp, 'blank', 'the dowel holds')}`,
    ),
    clamp(placing, ''),
    feel(set, placing),
  ];
}

function clamp({ base }: Placing, lasts: string): Step {
  return step(
    markup`Tighten the clamps a little each, crosswise, while you press against the fence at the ${base.side} side; a clamp must not drag the blank. ${lasts}`,
  );
}

function feel({ job }: DowelSet, placing: Placing): Step {
  const { units } = job.shop;
  const isArm = placing.contacts.some(({ kind }) => kind === 'arm-end');
  const where = isArm
    ? 'It must not go in at both ends of the fence at once.'
    : 'It must not go in at either.';
  return step(
    markup`Try a ${lengthText(units === 'inch' ? 0.0508 : 0.05, units)} feeler at the black wedges of the picture. ${where} If it does, take the blank out, clean, and lay it again.`,
  );
}

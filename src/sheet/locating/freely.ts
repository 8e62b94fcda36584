import type { Job, Spread } from '../../job/job.ts';
import { cornerAt, frontUpCorner } from '../../setup/place.ts';
import type { Placing } from '../../setup/placing.ts';
import { markup } from '../html.ts';
import { onBedWords } from '../place-words.ts';
import { markCorner } from '../places.ts';
import type { Step } from '../step.ts';
import { step } from '../step.ts';
import { unitText } from '../words.ts';
import { writtenSpread } from '../written-spread.ts';

/** A first placing that nothing seats: laid by eye, square to the machine, and clamped for good. */
export function layFreely(job: Job, placing: Placing, laid: Spread, until: string): Step[] {
  const unit = unitText(job.shop.units);
  const corner = frontUpCorner(job);
  return [
    step(markup`Brush bed and blank clean: no chip under it.`),
    step(
      markup`Lay the blank down, <b>${placing.faceUp.toUpperCase()} up, M at the ${markCorner(job, placing)}</b>, its ${corner} corner at about ${onBedWords(job, cornerAt(job, corner))} from the near-left corner of the bed. Nothing locates it yet, so its exact place does not matter; zero is touched on it below.`,
    ),
    step(
      markup`Turn it until its ${placing.base.edge} edge runs along the machine's X: jog a pointer along that edge from end to end. It may run off by no more than ${writtenSpread(laid.text, job.shop.units)}.`,
      { label: 'gap, one end', unit },
      { label: 'other end', unit },
    ),
    step(
      markup`Tighten the clamps a little each, crosswise, and look at the pointer again. This one clamping lasts ${until}: no clamp may stand where something is drilled or cut.`,
    ),
  ];
}

import type { Units } from '../job/job.ts';
import type { Prediction } from '../stackup/prediction.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { sourceAndSpread } from './source-words.ts';

/** The sources whose figures nobody stated. */
export function assumedList(prediction: Prediction, units: Units): Html {
  const { assumed } = prediction;
  if (assumed.length === 0)
    return markup`<p>Nothing: every figure was stated in the job or the shop file.</p>`;
  return markup`<p> Nobody stated how far these may be off, so common figures were taken, which have no published source. State your own to make the prediction yours. ${assumed.map((name) => sourceAndSpread(prediction, name, units)).join('; ')}. </p>`;
}

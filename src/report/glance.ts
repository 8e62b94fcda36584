import type { Job } from '../job/job.ts';
import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { chanceText, levelText } from '../sheet/words.ts';
import type { NeedPrediction, Prediction } from '../stackup/prediction.ts';
import { limitWords, needPath } from './limit-words.ts';
import { unitsOf } from './need-units.ts';
import { told, toldChance, toldEnds, toldLimit } from './told.ts';

/** All needs at a glance: limit, where the parts come out, how many are good, met or not. */
export function glance(job: Job, prediction: Prediction): Html {
  if (prediction.needs.length === 0) return markup``;
  return markup`<div class="wide"><table class="glance">
<thead><tr><th scope="col">Need</th><th scope="col">Limit</th><th scope="col">If nothing were off</th><th scope="col">95 of 100 parts lie from</th><th scope="col">to</th><th scope="col">Good parts</th><th scope="col">${levelText(job.goodEnoughShare)} wanted</th></tr></thead>
<tbody>${prediction.needs.map((need, k) => row(job, prediction, need, k))}</tbody></table></div>${batchWords(prediction)}`;
}

function row(job: Job, { digitsAsked }: Prediction, need: NeedPrediction, k: number): Html {
  const path = needPath(k);
  const as = unitsOf(need, job.shop.units);
  const [low, high] = toldEnds(path, need, digitsAsked, as);
  const good = need.chance >= job.goodEnoughShare;
  return markup`<tr><th scope="row"><a href="#need-${k + 1}">${need.name}</a></th><td>${limitWords(need, path, as)}</td><td>${toldLimit(`${path}.nominal`, need.nominal, as)}</td><td>${low}</td><td>${high}</td><td class="big">${toldChance(path, need, digitsAsked)}</td><td>${metMark(good)}</td></tr>`;
}

/** Met or not, told by a sign, a word and a frame. */
export const metMark = (good: boolean): Html =>
  good
    ? markup`<span class="mark met"><span aria-hidden="true">✓</span> met</span>`
    : markup`<span class="mark missed"><span aria-hidden="true">✕</span> missed</span>`;

function batchWords({ batch }: Prediction): Html {
  if (batch.partCount === 1 || batch.allGood === null) return markup``;
  const rest = batch.rest;
  const first =
    rest?.firstCorrected == null
      ? markup``
      : markup` When every need is corrected by what the first part measures, the rest come out right with a chance of ${told('batch.rest.firstCorrected.chance', rest.firstCorrected.chance, chanceText(rest.firstCorrected.chance))}.`;
  return markup`<p class="batch">Of ${batch.partCount} parts made with one set-up, all come out right with a chance of ${told('batch.allGood', batch.allGood, chanceText(batch.allGood))}; ${told('batch.expectedBad', batch.expectedBad, `${Number(batch.expectedBad.toPrecision(2))} parts`)} are expected not to.${first}</p>`;
}

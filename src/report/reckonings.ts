import type { Units } from '../job/job.ts';
import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { chanceText } from '../sheet/words.ts';
import type { Figures, NeedPrediction, Prediction } from '../stackup/prediction.ts';
import { needPath } from './limit-words.ts';
import { unitsOf, type NeedUnits } from './need-units.ts';
import {
  told,
  toldCertain,
  toldChance,
  toldEnds,
  toldLimit,
  toldWorked,
  type JsonPath,
} from './told.ts';

/** Every need by worst case, by the straight line and by trials, and whether the straight line would do. */
export function reckonings(prediction: Prediction, units: Units): Html {
  return markup`<div class="wide"><table class="reckonings">
<thead><tr><th scope="col">Way of reckoning</th><th scope="col">from</th><th scope="col">to</th><th scope="col">mean</th><th scope="col">standard deviation</th><th scope="col">good parts</th></tr></thead>
${prediction.needs.map((need, k) => body(prediction, need, needPath(k), unitsOf(need, units)))}</table></div>
<p class="small">Worst case: everything at its limit at once, the worst way round; “searched” looks for it with the whole model, “added up” adds up what a straight line says. First order: the same straight line with the rule for spreads. Trials: imagined parts, each worked through exactly (JCGM 101:2008); from and to are then the ends between which 95 of 100 parts lie.</p>`;
}

function body(prediction: Prediction, need: NeedPrediction, path: JsonPath, as: NeedUnits): Html {
  const { digitsAsked } = prediction;
  const { firstOrder: first } = need;
  const widest: Figures = (need.shape === 'plain' ? need.largest : null) ?? need;
  const widestPath = widest === need ? path : `${path}.largest`;
  const worst = (key: 'worst' | 'worstLinear'): Html =>
    markup`<td>${toldWorked(`${path}.${key}.0`, need[key][0], as)}</td><td>${toldWorked(`${widestPath}.${key}.1`, widest[key][1], as)}</td><td>–</td><td>–</td><td>–</td>`;
  const [low] = toldEnds(path, need, digitsAsked, as);
  const [, high] = toldEnds(widestPath, widest, digitsAsked, as);
  const mean =
    need.moments === 'no mean'
      ? markup`–`
      : toldCertain(`${path}.mean`, need.mean, need, 'mean', digitsAsked, as);
  const sd =
    need.moments === 'known'
      ? toldCertain(`${path}.sd`, need.sd, need, 'sd', digitsAsked, as)
      : markup`–`;
  return markup`<tbody><tr class="name"><th scope="rowgroup" colspan="6">${need.name}</th></tr>
<tr><th scope="row">worst case, searched</th>${worst('worst')}</tr>
<tr><th scope="row">worst case, added up</th>${worst('worstLinear')}</tr>
<tr><th scope="row">first order</th><td>–</td><td>–</td><td>${toldWorked(`${path}.firstOrder.mean`, first.mean, as)}</td><td>${toldWorked(`${path}.firstOrder.sd`, first.sd, as)}</td><td>${told(`${path}.firstOrder.chance`, first.chance, chanceText(first.chance))}</td></tr>
<tr class="trials"><th scope="row">trials</th><td>${low}</td><td>${high}</td><td>${mean}</td><td>${sd}</td><td>${toldChance(path, need, digitsAsked)}</td></tr>
<tr class="words"><td colspan="6">${straightWords(prediction, need, path, as)}</td></tr></tbody>`;
}

/** Whether a straight line would have done (JCGM 101:2008, clause 8), and in what it fails where it does. */
function straightWords(
  { sources }: Prediction,
  need: NeedPrediction,
  path: JsonPath,
  as: NeedUnits,
): Html {
  const { agrees, timesBad, switching, off, tolerance } = need.firstOrder;
  const words = switching
    .slice(0, 2)
    .map((id) => sources.find(({ name }) => name === id)?.words ?? id);
  const why =
    words.length === 0
      ? ''
      : ` What touches, or what counts, switches with ${words.join(' and ')}, which a straight line cannot see.`;
  const ends = markup`its 95 % ends are off by ${toldLimit(`${path}.firstOrder.off.0`, off[0], as)} and ${toldLimit(`${path}.firstOrder.off.1`, off[1], as)}, where ${toldLimit(`${path}.firstOrder.tolerance`, tolerance, as)} may be`;
  if (timesBad !== null)
    return markup`<b>First order does not do here:</b> there are at least ${told(`${path}.firstOrder.timesBad`, timesBad, `${timesText(timesBad)} times`)} as many bad parts as it says; ${ends}.${why}`;
  return agrees
    ? markup`<b>First order would do here:</b> ${ends} (JCGM 101:2008, clause 8).`
    : markup`<b>First order does not do here:</b> ${ends} (JCGM 101:2008, clause 8).${why}`;
}

const timesText = (times: number): string =>
  times < 3 ? (Math.floor(times * 2) / 2).toFixed(1) : String(Math.floor(times));

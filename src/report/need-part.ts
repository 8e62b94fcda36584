import type { Job, Origin } from '../job/job.ts';
import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { landingPicture } from '../sheet/landing-picture.ts';
import { levelText } from '../sheet/words.ts';
import type { NeedPrediction, Prediction } from '../stackup/prediction.ts';
import { dotPlot } from './dot-plot.ts';
import { metMark } from './glance.ts';
import { JUDGED_BY, limitWords, needPath } from './limit-words.ts';
import { makers, recurring } from './makers.ts';
import { unitsOf } from './need-units.ts';
import { told, toldCertain, toldChance, toldEnds, toldLimit, toldWorked } from './told.ts';

/** One need: how it comes out against its limits, what makes that, what of it comes back. */
export function needPart(
  job: Job,
  prediction: Prediction,
  need: NeedPrediction,
  index: number,
  origins: ReadonlyMap<string, Origin>,
): Html {
  const path = needPath(index);
  const { digitsAsked } = prediction;
  const as = unitsOf(need, job.shop.units);
  const [low, high] = toldEnds(path, need, digitsAsked, as);
  const mean =
    need.moments === 'no mean'
      ? markup`none: too few readings`
      : toldCertain(`${path}.mean`, need.mean, need, 'mean', digitsAsked, as);
  return markup`<article class="need" id="need-${index + 1}">
<header><h3>${need.name}</h3>${metMark(need.chance >= job.goodEnoughShare)}<p>${JUDGED_BY[need.kind]}: ${limitWords(need, path, as)}</p></header>
<div class="spread"><figure>${dotPlot(need, as)}</figure>
<dl class="figures"><dt>Good parts</dt><dd class="big">${toldChance(path, need, digitsAsked)}</dd><dt>Wanted</dt><dd>${levelText(job.goodEnoughShare)}</dd><dt>If nothing were off</dt><dd>${toldLimit(`${path}.nominal`, need.nominal, as)}</dd><dt>On average</dt><dd>${mean}</dd><dt>95 of 100 parts</dt><dd>${low} to ${high}</dd>${largest(need, path, digitsAsked, as)}</dl></div>
${need.shape === 'radial' ? markup`<div class="seen"><figure>${landingPicture(need, job.shop.units)}</figure><p>Seen from the front: each dot is one imagined part, a cross one beyond the limit. The full ring is the limit; the dashed line holds 95 parts in 100 of a spread that is as wide.</p></div>` : markup``}
<h4>What makes it</h4>${makers(prediction, need, path, origins, job.shop.units)}
<h4>What of it comes back</h4>${recurring(need, path)}
${measured(need, path, as)}</article>`;
}

/** Of a lip that has both limits, its widest place. */
function largest(
  need: NeedPrediction,
  path: string,
  digitsAsked: number,
  as: ReturnType<typeof unitsOf>,
): Html {
  if (need.shape === 'radial' || need.largest === null) return markup``;
  const [low, high] = toldEnds(`${path}.largest`, need.largest, digitsAsked, as);
  return markup`<dt>At its widest, 95 of 100</dt><dd>${low} to ${high}</dd>`;
}

/** What measuring every part with the gauge that was named would do. */
function measured(need: NeedPrediction, path: string, as: ReturnType<typeof unitsOf>): Html {
  if (need.measured === null) return markup``;
  const { asIs, guarded, guardMm } = need.measured;
  const rare = (of: string, share: number): Html =>
    told(
      `${path}.measured.${of}`,
      share,
      share < 1e-4 ? 'under 0.01 %' : `${Number((100 * share).toPrecision(2))} %`,
    );
  return markup`<h4>Measured with that gauge</h4><p>As the limits are, ${rare('asIs.falseAccept', asIs.falseAccept)} of all parts are bad and pass, ${rare('asIs.falseReject', asIs.falseReject)} are good and thrown out. When only what reads ${toldWorked(`${path}.measured.guardMm`, guardMm, as)} inside the limits passes: ${rare('guarded.falseAccept', guarded.falseAccept)} and ${rare('guarded.falseReject', guarded.falseReject)}.</p>`;
}

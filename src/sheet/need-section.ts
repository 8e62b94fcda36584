import type { Units } from '../job/job.ts';
import type { NeedPrediction, Prediction, RecurrenceKey } from '../stackup/prediction.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { landingPicture } from './landing-picture.ts';
import { NEW_EACH_TIME, RECURRENCE_WORDS, RECURS } from './recurrence-words.ts';
import { sourceWords } from './source-words.ts';
import { stripPicture } from './strip-picture.ts';
import { limitsText, per100 } from './verdict-line.ts';
import { certainChanceText, endsText, meanText } from './certain-words.ts';
import { lengthText, levelText, shareText } from './words.ts';

/** A need: picture of where it lands, and its numbers in plain words. */
export function needSection(
  prediction: Prediction,
  need: NeedPrediction,
  goodEnoughShare: number,
  units: Units,
): Html {
  const good = need.chance >= goodEnoughShare;
  return markup`<section class="need">
<h3>${need.name}</h3>
<div class="beside">
<figure>${need.shape === 'radial' ? landingPicture(need, units) : stripPicture(need, units)}</figure>
<div>
<p class="chance"> <b>${certainChanceText(need, prediction.digitsAsked)}</b> of parts come out right.<br />Wanted: ${levelText(goodEnoughShare)}. ${good ? 'Good enough.' : 'Not good enough yet.'}</p>
<table class="numbers">
<tr>
<th scope="row">Limit</th>
<td>${limitsText(need, units)}</td></tr>
<tr>
<th scope="row">If nothing were off</th>
<td>${lengthText(need.nominal, units)}${per100(need)}</td></tr>
<tr>
<th scope="row">To be expected (mean)</th>
<td>${need.moments === 'no mean' ? 'none: too few readings' : `${meanText(need, prediction.digitsAsked, units)}${per100(need)}`}</td></tr>
<tr>
<th scope="row">95 parts in 100 lie from</th>
<td>${endsText(need, prediction.digitsAsked, units)}${per100(need)}</td></tr></table>
<h4>What has the largest hand in the scatter</h4>
<ul class="sources">${need.moments === 'known' ? markup`` : markup`<li>Too few readings of something to tell: trust the interval and the chance.</li>`}${need.shares.slice(0, 3).map((share) => markup`<li><b>${shareText(share.share)}</b> ${sourceWords(prediction, share.source)}</li>`)}</ul>
<h4>How much of the scatter comes back</h4>
<p>${need.recurring !== null && need.moments === 'known' ? recurring(need.recurring) : markup`Not to be told from so few readings.`}</p></div></div></section>`;
}

type Recurring = NonNullable<NeedPrediction['recurring']>;

/** Total effects of kinds that work together share some scatter, so they are listed and never summed. */
function recurring(shares: Recurring): Html {
  return markup`<b>The same from part to part:</b> ${parts(shares, RECURS)}. A test piece shows it and an offset takes it out. <b>New every time:</b> ${parts(shares, NEW_EACH_TIME)}.`;
}

/** `each blank 75 %, each cut 10 %`, or `hardly any`. */
function parts(shares: Recurring, keys: readonly RecurrenceKey[]): string {
  const named = keys
    .filter((key) => shares[key] >= 0.005)
    .map((key) => `${RECURRENCE_WORDS[key]} ${shareText(shares[key])}`);
  return named.length === 0 ? 'hardly any' : named.join(', ');
}

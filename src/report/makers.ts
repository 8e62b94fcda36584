import type { Origin, Units } from '../job/job.ts';
import type { Html } from '../sheet/html.ts';
import { joined, markup } from '../sheet/html.ts';
import { NEW_EACH_TIME, RECURRENCE_WORDS, RECURS } from '../sheet/recurrence-words.ts';
import type { NeedPrediction, Prediction, RecurrenceKey } from '../stackup/prediction.ts';
import { between, told, toldShare, type JsonPath } from './told.ts';
import { originWords, spreadOf } from './where-from.ts';
import { shareText } from '../sheet/words.ts';

/** Sources that get a bar of their own. */
const BARS = 6;
/** A share below this is hardly any. */
const FELT = 0.005;

/** What makes the scatter of a need: a bar and words for each of the largest sources. */
export function makers(
  prediction: Prediction,
  need: NeedPrediction,
  path: JsonPath,
  origins: ReadonlyMap<string, Origin>,
  units: Units,
): Html {
  if (need.moments !== 'known')
    return markup`<p>Too few readings of something to tell: trust the interval and the chance.</p>`;
  const felt = need.shares.filter(({ share }) => share >= FELT);
  if (felt.length === 0) return markup`<p>Nothing is off.</p>`;
  const bars = felt.slice(0, BARS).map(({ source, share }, k) => {
    const line = prediction.sources.find(({ name }) => name === source);
    const words = line?.words ?? source;
    const from =
      line === undefined
        ? ''
        : `${spreadOf(line, units)}; ${originWords(origins.get(source), line.text)}`;
    const wide = Math.round(1000 * Math.min(1, share)) / 10;
    return markup`<li><span class="share">${toldShare(`${path}.shares.${k}.share`, share)}</span><span class="bar" aria-hidden="true"><i style="width:${wide}%"></i></span><span class="what"><b>${words}</b> <small>${from}</small></span></li>`;
  });
  const others = felt.length - bars.length;
  return markup`<ol class="makers">${bars}</ol>${others > 0 ? markup`<p class="small">${others === 1 ? 'One more has' : `${others} more have`} a smaller hand in it.</p>` : markup``}${acting(prediction, need, path)}`;
}

/** What acts together, and what another draw of one thing alone would mend. */
function acting(prediction: Prediction, need: NeedPrediction, path: JsonPath): Html {
  const together =
    need.together?.isFelt === true
      ? markup`Some of these act together, so their shares add up to more than all. `
      : markup``;
  const mends = need.shares
    .map(({ bad, source }, k) => ({ bad, source, k }))
    .filter(({ bad }) => bad !== null && bad.share >= 0.2)
    .sort((a, b) => b.bad!.share - a.bad!.share)[0];
  const words = prediction.sources.find(({ name }) => name === mends?.source)?.words;
  const mended =
    mends === undefined || words === undefined
      ? markup``
      : markup`Of the bad parts, ${told(`${path}.shares.${mends.k}.bad.share`, mends.bad!.share, shareText(mends.bad!.share))} would be good with another draw of one thing alone: ${words}.`;
  return together.html + mended.html === ''
    ? markup``
    : markup`<p class="small">${joined([together, mended])}</p>`;
}

/** How much of the scatter comes back from part to part, and how much is new each time. */
export function recurring(need: NeedPrediction, path: JsonPath): Html {
  if (need.moments !== 'known') return markup`<p>Not to be told from so few readings.</p>`;
  if (need.recurring === null) return markup`<p>Not worked out in a quick answer.</p>`;
  const { recurring: shares } = need;
  return markup`<dl class="recurs"><dt>The same from part to part</dt><dd>${kinds(shares, path, RECURS)}<small>A test piece shows it, and an offset dials it out.</small></dd><dt>New every time</dt><dd>${kinds(shares, path, NEW_EACH_TIME)}<small>Nothing dials it out: only a steadier way helps.</small></dd></dl>`;
}

/** Kinds that work together share some scatter, so they are listed and never summed. */
function kinds(
  shares: Readonly<Record<RecurrenceKey, number>>,
  path: JsonPath,
  keys: readonly RecurrenceKey[],
): Html {
  const felt = keys.filter((key) => shares[key] >= FELT);
  if (felt.length === 0) return markup`hardly any. `;
  const each = felt.map(
    (key) => markup`${RECURRENCE_WORDS[key]} ${toldShare(`${path}.recurring.${key}`, shares[key])}`,
  );
  return markup`${between(each, ', ')}. `;
}

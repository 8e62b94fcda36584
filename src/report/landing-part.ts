import type { Job } from '../job/job.ts';
import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { lengthText } from '../sheet/words.ts';
import type { Prediction } from '../stackup/prediction.ts';
import { landedBacks } from './landed.ts';
import { landingMap, letterOf } from './landing-map.ts';
import { landingSpots } from './landing-spots.ts';
import { limitWords, needPath } from './limit-words.ts';
import { unitsOf } from './need-units.ts';

/** How many of the first imagined parts are shown. */
const SHOWN = 200;

/** The part to scale with where the back lands on it, and the words to read it by. */
export function landingPart(job: Job, prediction: Prediction): Html {
  const backs = landedBacks(job, prediction.seed, Math.min(SHOWN, prediction.trials));
  const spots = landingSpots(job, prediction, backs);
  const { picture, times, ghostCount } = landingMap(job, backs, spots);
  const { units } = job.shop;
  const cuts = job.features.map(
    ({ name, face, depthMm, through }, k) =>
      markup`<li><span class="badge round">${k + 1}</span> <span><b>${name}</b>, ${face}, ${through ? 'through' : `${lengthText(depthMm, units)} deep`}</span></li>`,
  );
  const rings = spots.flatMap(({ limit }, k) => {
    if (limit === null) return [];
    const index = prediction.needs.findIndex(({ name }) => name === limit.need);
    const need = prediction.needs[index]!;
    return [
      markup`<li><span class="badge square">${letterOf(k)}</span> <span><b>${need.name}</b>, ${limitWords(need, needPath(index), unitsOf(need, units))}</span></li>`,
    ];
  });
  return markup`<figure class="map">${picture}</figure>
<p class="reading"><b>Misses are drawn ${times} times as large as the part.</b> The front is taken as the reference: every mark shows how far the back lands from where the front wants it.</p>
<ul class="signs"><li>${sign(markup`<path d="M1 5h14" stroke="#111111" stroke-width="1.4"/>`)} cut from the front</li><li>${sign(markup`<path d="M1 5h14" stroke="#111111" stroke-width="1.2" stroke-dasharray="4 2"/>`)} cut from the back, where it should be</li><li>${sign(markup`<path d="M1 3h14M1 5h14M1 6.5h14" stroke="#8a3a12" stroke-width="0.6"/>`)} the same where it lands, ${ghostCount} imagined parts</li><li>${sign(markup`<circle cx="8" cy="5" r="1.8" fill="#8a3a12"/>`)} one imagined part</li>${rings.length === 0 ? markup`` : markup`<li>${sign(markup`<path d="M5 2l6 6m0 -6l-6 6" stroke="#111111" stroke-width="1.2"/>`)} one beyond the limit</li><li>${sign(markup`<circle cx="8" cy="5" r="4" fill="none" stroke="#111111" stroke-width="1.6"/>`)} the limit, magnified alike</li>`}</ul>
<div class="keys"><ul>${cuts}</ul>${rings.length === 0 ? markup`` : markup`<ul>${rings}</ul>`}</div>`;
}

const sign = (inside: Html): Html =>
  markup`<svg viewBox="0 0 16 10" width="26" height="16" aria-hidden="true">${inside}</svg>`;

import type { Job } from '../job/job.ts';
import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { sceneData } from './scene/scene-data.ts';
import type { Scene } from './scene/scene.ts';
import { stillPicture } from './scene/still.ts';

/** The bed in both placings as solids to turn; still pictures of the same where that cannot be. */
export function view(job: Job, scenes: readonly [Scene, Scene], isLive: boolean): Html {
  const titles = scenes.map(({ placing }, k) => titleOf(placing.faceUp, k));
  const stills = scenes.map(
    (scene, k) =>
      markup`<figure class="paper still">${stillPicture(scene, `${titles[k]!}, seen from near left`)}<figcaption>${titles[k]!}, with all that is cut by its end; seen from near left.</figcaption></figure>`,
  );
  const kinds = [
    ...new Map(
      scenes.flatMap(({ things }) => things.map(({ kind, words }) => [kind, words] as const)),
    ),
  ];
  const live = isLive
    ? markup`<div class="live-only">
<div class="bar">${titles.map((title, k) => markup`<button type="button" data-placing="${k}" aria-pressed="${String(k === 0)}">${title}</button>`)}</div>
<canvas tabindex="0" role="img" aria-label="${job.name} on the bed, as solids" aria-describedby="view-keys"></canvas>
<div class="bar"><button type="button" data-do="left">Turn left</button><button type="button" data-do="right">Turn right</button><button type="button" data-do="closer">Closer</button><button type="button" data-do="away">Further</button><button type="button" data-do="above">From above</button><button type="button" data-do="again">As at first</button></div>
<div class="bar shown">${kinds.filter(([kind]) => kind !== 'bed').map(([kind, words]) => markup`<label><input type="checkbox" data-kind="${kind}" checked /> <i class="${kind}" aria-hidden="true"></i>${words}</label>`)}</div>
<p class="small" id="view-keys">Drag to turn, pinch to zoom; click into the picture and the wheel zooms too. Keys: arrows turn and tilt, + and − zoom, 1 and 2 change the placing, A looks from above, 0 goes back.</p>
<p class="small" data-said aria-live="polite"></p></div>`
    : markup``;
  const data: Html = {
    html: isLive
      ? `<script type="application/json" id="scenes">${sceneData(scenes, titles)}</script>`
      : '',
  };
  return markup`<div id="view">${live}<div class="stills">${stills}</div></div>${data}<p class="small">Drawn nominally. Slanting faces are shown as steps. Of the clamps only what stands in the way is drawn.</p>`;
}

const titleOf = (face: 'front' | 'back', k: number): string =>
  `${k === 0 ? 'First' : 'Second'} placing, ${face} up`;

import type { Job, Units } from '../job/job.ts';
import type { Clearance } from '../sweep/clearance.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { gapText, lengthText } from './words.ts';

const WHATS = ['cutter', 'collet nut', 'spindle', 'dust shoe'] as const;

/** How low each thing that moves with the cutter passes by each thing that stands on the bed, first placing first. */
export function heightsTable(job: Job, column: string, clearances: readonly Clearance[]): Html {
  const order = job.first === 'front' ? ['front-up', 'back-up'] : ['back-up', 'front-up'];
  const rows = order.flatMap((placing) => {
    const here = clearances.filter((clearance) => clearance.placing === placing);
    const bodies = [...new Set(here.map((clearance) => clearance.body))];
    return bodies.map((body) =>
      row(
        placing,
        here.filter((c) => c.body === body),
        job.shop.units,
      ),
    );
  });
  if (rows.length === 0) return markup`<p>No heights were worked out for this job.</p>`;
  return markup`<table class="heights">
<thead>
<tr>
<th scope="col">${column}</th>
<th scope="col">Its top</th>${WHATS.map((what) => markup`<th scope="col">${what}</th>`)}</tr></thead>
<tbody>${rows}</tbody></table>`;
}

/** Those that would strike something. */
export function strikes(clearances: readonly Clearance[]): readonly Clearance[] {
  return clearances.filter((c) => c.lowestMm !== null && c.lowestMm <= c.bodyTopMm);
}

function row(placing: string, here: readonly Clearance[], units: Units): Html {
  const top = here[0]!;
  const words = placing === 'front-up' ? 'front up' : 'back up';
  return markup`<tr>
<th scope="row">${top.body}, ${words}</th>
<td>${lengthText(top.bodyTopMm, units)}</td>${WHATS.map((what) =>
    cell(
      here.find((c) => c.what === what),
      units,
    ),
  )}</tr>`;
}

function cell(clearance: Clearance | undefined, units: Units): Html {
  if (!clearance) return markup`<td>not stated</td>`;
  const { lowestMm, bodyTopMm, besideMm, feature } = clearance;
  if (lowestMm === null) return markup`<td>${gapText(besideMm, units)} beside</td>`;
  const over = lowestMm - bodyTopMm;
  const cutting = feature === null ? '' : ` (${feature})`;
  return over > 0
    ? markup`<td>${gapText(over, units)} above${cutting}</td>`
    : markup`<td class="strike"><b>STRIKES</b>, ${lengthText(-over, units)} too low${cutting}</td>`;
}

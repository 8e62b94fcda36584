import type { Job } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Html } from '../../html.ts';
import { markup } from '../../html.ts';
import { programWords, xyWords } from '../../place-words.ts';
import type { Dowel } from './dowel-places.ts';
import { holeOver } from './dowel-places.ts';

/** Where each dowel stands and each hole is, as both placings count and as the bed does. */
export function dowelTable(
  job: Job,
  dowels: readonly Dowel[],
  [first, second]: readonly [Placing, Placing],
): Html {
  const row = (dowel: Dowel): Html => markup`<tr>
<th scope="row"><b class="letter">${dowel.number}</b></th>
<td>${xyWords(job, dowel.hole)}</td>
<td>${programWords(job, first, dowel.stands)}</td>
<td>${programWords(job, second, dowel.stands)}</td>
<td>hole ${holeOver(job, dowels, dowel, second)}</td>
<td>${xyWords(job, dowel.onBed)}</td></tr>`;
  return markup`<table class="milling">
<thead>
<tr>
<th scope="col">No.</th>
<th scope="col">Hole in the blank, seen from the front, from its left and lower edge</th>
<th scope="col">From the zero of the first placing</th>
<th scope="col">From the zero of the second</th>
<th scope="col">Over it then</th>
<th scope="col">On the bed, from its near-left corner</th></tr></thead>
<tbody>${dowels.map(row)}</tbody></table>`;
}

import type { Job } from '../../../job/job.ts';
import type { Html } from '../../html.ts';
import { markup } from '../../html.ts';
import type { MillingRun } from './milling-runs.ts';
import { FINISH_MM } from '../../../jig/program/land-runs.ts';
import { lengthText } from '../../words.ts';

/** Where the cutter's centre runs to mill each land, in the shop's units. */
export function millingTable(job: Job, runs: readonly MillingRun[]): Html {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const row = (run: MillingRun): Html => {
    const [along, across] = run.along === 'x' ? ['X', 'Y'] : ['Y', 'X'];
    return markup`<tr>
<th scope="row"><b class="letter">${run.letter}</b>${run.face === 'fence' ? 'fence' : 'side stop'}</th>
<td>${across} ${size(run.firstPassMm)}</td>
<td>${across} ${size(run.lastPassMm)}</td>
<td>${along} ${size(run.fromMm)} → ${size(run.toMm)}</td>
<td>${size(run.lowMm)} to ${size(run.highMm)}</td>
<td>${size(run.offMm)}</td></tr>`;
  };
  return markup`<table class="milling">
<thead>
<tr>
<th scope="col">Face</th>
<th scope="col">First pass, ${size(FINISH_MM)} left on</th>
<th scope="col">Last pass</th>
<th scope="col">from → to</th>
<th scope="col">Z above the bed</th>
<th scope="col">comes off</th></tr></thead>
<tbody>${runs.map(row)}</tbody></table>`;
}

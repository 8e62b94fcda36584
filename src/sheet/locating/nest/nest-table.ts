import type { Cutter, Job } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Html } from '../../html.ts';
import { markup } from '../../html.ts';
import { xyWords } from '../../place-words.ts';
import { lengthText } from '../../words.ts';
import { FINISH_MM } from '../../../jig/program/land-runs.ts';
import type { NestShape } from '../../../jig/nest/nest-shape.ts';

/** Where the cutter's centre runs along the walls of a nest round the blank, in the direction of a climb cut. */
export function wallTable(job: Job, shape: NestShape, cutter: Cutter, { zero }: Placing): Html {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const r = cutter.diameterMm / 2;
  const [left, right] = [shape.box.lowX + r - zero.x, shape.box.highX - r - zero.x];
  const [near, far] = [shape.box.lowY + r - zero.y, shape.box.highY - r - zero.y];
  // Counter-clockwise round the inside, the wall is on the right of the way the cutter goes.
  const runs = [
    ['near', 'Y', near, 1, 'X', left, right],
    ['right', 'X', right, -1, 'Y', near, far],
    ['far', 'Y', far, -1, 'X', right, left],
    ['left', 'X', left, 1, 'Y', far, near],
  ] as const;
  const rows = runs.map(
    ([wall, across, at, inwards, along, from, to]) => markup`<tr>
<th scope="row">${wall} wall</th>
<td>${across} ${size(at + inwards * FINISH_MM)}</td>
<td>${across} ${size(at)}</td>
<td>${along} ${size(from)} → ${size(to)}</td></tr>`,
  );
  return markup`<table class="milling">
<thead>
<tr>
<th scope="col">Wall</th>
<th scope="col">First pass, ${size(FINISH_MM)} left on</th>
<th scope="col">Last pass</th>
<th scope="col">from → to</th></tr></thead>
<tbody>${rows}</tbody></table>`;
}

/** Where the cutter's centre goes down to clear the corners. */
export function reliefWords(job: Job, { reliefs }: NestShape, { zero }: Placing): string {
  return reliefs.map(({ x, y }) => xyWords(job, { x: x - zero.x, y: y - zero.y })).join('; ');
}

import type { Feature, Job, Units } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { Placings } from '../sweep/clearances.ts';
import { featureNumber } from './badges.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { Key } from './locating/way.ts';
import type { SheetInput } from './sheet-input.ts';
import { touchPlaces } from './touch-places.ts';
import { lengthText } from './words.ts';

/** What the numbers, letters and lines of the drawings stand for. */
export function keyList({ job, placings }: SheetInput, key: Key): Html {
  const units = job.shop.units;
  return markup`<div class="key">
<div>
<h4>Cuts, places as seen from the front</h4>
<ul>${job.features.map((feature, i) => markup`<li><b class="number">${featureNumber(i)}</b>${feature.name}: ${feature.face}, ${shapeWords(feature, units)}, ${depthWords(feature, units)}, ${placeName(feature)} ${lengthText(feature.at.x, units)} from left, ${lengthText(feature.at.y, units)} from lower edge</li>`)}</ul></div>
<div>
<h4>${key.title}</h4>
<ul>${key.things.map((thing) => markup`<li>${thing}</li>`)}</ul>
<h4>Lines</h4>
<ul class="lines">
<li><b>Full</b>: cut on the face that is up</li>
<li><b>Dashed</b>: cut on the face below</li>
<li> <b>Thick edge</b>: marked reference edge${job.blank.marked.length === 0 ? ' (none in this job)' : ''}</li>
${listed(key.lines)}${touchWords(job, placings)}</ul></div></div>
<div class="solids">${key.pictures}</div>`;
}

function shapeWords({ shape }: Feature, units: Units): string {
  const size = (mm: number): string => lengthText(mm, units);
  switch (shape.kind) {
    case 'circle':
      return `${size(shape.diameterMm)} across`;
    case 'rectangle':
      return `${size(shape.widthMm)} by ${size(shape.heightMm)}`;
    case 'slot':
      return `slot ${size(shape.lengthMm)} by ${size(shape.widthMm)}`;
    case 'polygon':
      return `outline of ${shape.vertices.length} corners`;
    case 'outline':
      return 'outline of its drawing';
    default:
      return unreachable(shape);
  }
}

/** What stands at the place that is given: a drawn outline has no centre of its own. */
function placeName({ shape }: Feature): string {
  return shape.kind === 'polygon' || shape.kind === 'outline' ? 'its origin' : 'centre';
}

function depthWords(feature: Feature, units: Units): string {
  return feature.through ? 'right through' : `${lengthText(feature.depthMm, units)} deep`;
}

/** One item a line. */
const listed = (lines: readonly Html[]): readonly Html[] =>
  lines.map((line, i) => markup`${i === 0 ? '' : '\n'}<li>${line}</li>`);

/** What the crosses stand for, where a drawing has any. */
function touchWords(job: Job, placings: Placings): Html {
  const all = [placings.frontUp, placings.backUp].flatMap((placing) => touchPlaces(job, placing));
  return all.length === 0
    ? markup``
    : markup`<li><b>Slanting cross</b>: here X, Y or Z zero is touched; its place counts from the left and the near side of the blank as it lies, whichever face is up</li>`;
}

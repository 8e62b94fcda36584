import type { Feature, StopsJob, Units } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import { featureNumber, stopLetter } from './badges.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { placingOf } from './places.ts';
import type { SheetInput, SheetStop } from './sheet-input.ts';
import { isInUse } from './stop-use.ts';
import { touchPlaces } from './touch-places.ts';
import { lengthText } from './words.ts';

/** What the numbers, letters and lines of the drawings stand for. */
export function keyList(input: SheetInput): Html {
  const { job, stops } = input;
  const units = job.shop.units;
  return markup`<div class="key">
<div>
<h4>Cuts, places as seen from the front</h4>
<ul>${job.features.map((feature, i) => markup`<li><b class="number">${featureNumber(i)}</b>${feature.name}: ${feature.face}, ${shapeWords(feature, units)}, ${depthWords(feature, units)}, centre ${lengthText(feature.at.x, units)} from left, ${lengthText(feature.at.y, units)} from lower edge</li>`)}</ul></div>
<div>
<h4>Stops</h4>
<ul>${stops.map((stop, i) => markup`<li><b class="letter">${stopLetter(i)}</b>${stop.body.name}: ${lengthText(stop.body.highMm, units)} high, ${useWords(input, stop)}</li>`)}</ul>
<h4>Lines</h4>
<ul class="lines">
<li><b>Full</b>: cut on the face that is up</li>
<li><b>Dashed</b>: cut on the face below</li>
<li> <b>Thick edge</b>: marked reference edge${job.blank.marked.length === 0 ? ' (none in this job)' : ''}</li>
<li><b>Black wedge</b>: here the blank touches a stop (${bandWords(job)})</li>
<li><b>Crossed circle</b>: screw${stops.some((stop) => stop.pins.length > 0) ? markup`; <b>dot in a ring</b>: pin` : markup``}; <b>M</b>: the pencilled corner</li>${touchWords(input)}</ul></div></div>
<div class="solids">${input.stopPictures.map((picture, i) => markup`<figure><figcaption><b class="letter">${stopLetter(i)}</b></figcaption>${{ html: picture }}</figure>`)}</div>`;
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

function depthWords(feature: Feature, units: Units): string {
  return feature.through ? 'right through' : `${lengthText(feature.depthMm, units)} deep`;
}

function useWords({ placings }: SheetInput, stop: SheetStop): string {
  const used = (['front', 'back'] as const).filter((face) =>
    isInUse(stop, placingOf(placings, face)),
  );
  if (used.length === 2) return 'in both placings';
  return used.length === 1 ? `with the ${used[0]!} up` : 'the blank does not touch it';
}

/** What the crosses stand for, where a drawing has any. */
function touchWords({ job, placings }: SheetInput): Html {
  const all = [placings.frontUp, placings.backUp].flatMap((placing) => touchPlaces(job, placing));
  return all.length === 0
    ? markup``
    : markup`<li><b>Slanting cross</b>: here X, Y or Z zero is touched; its place counts from the left and the near side of the blank as it lies, whichever face is up</li>`;
}

function bandWords({ stops, shop }: StopsJob): string {
  return stops.band.kind === 'plain'
    ? `anywhere up to ${lengthText(stops.band.heightMm, shop.units)} above the bed`
    : `in a narrow band ${lengthText(stops.band.touchHeightMm, shop.units)} above the bed`;
}

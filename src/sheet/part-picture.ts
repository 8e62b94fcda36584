import { partFacets, type JigPart } from '../jig/parts/part.ts';
import { plateDrawing } from '../jig/plate/plate-drawing.ts';
import { facetsWithFoot } from '../jig/plate/plate-solid.ts';
import { svgOf } from '../export/svg.ts';
import type { Units } from '../job/job.ts';
import { solidPicture } from './solid-picture.ts';
import { lengthText } from './words.ts';

/** With more holes a solid picture is a thicket: the plan says more. */
const MOST_HOLES = 12;

/** A part as a solid from above, or its plan: an SVG element. */
export function partPicture(part: JigPart, widthMm: number, units: Units): string {
  const { form } = part;
  if (form.kind === 'plate' && form.plate.holes.length > MOST_HOLES)
    return svgOf(plateDrawing(form.plate))
      .replace(/^<\?xml[^>]*\?>\n/, '')
      .replace(/ width="[^"]*" height="[^"]*"/, ` width="${widthMm}mm"`);
  const facets =
    form.kind === 'plate' ? facetsWithFoot({ ...form.plate, words: [] }, 0) : partFacets(part);
  const places = facets.flat();
  const span = (axis: 'x' | 'y' | 'z'): string => {
    const along = places.map((p) => p[axis]);
    const low = along.reduce((l, a) => Math.min(l, a), Infinity);
    return lengthText(along.reduce((h, a) => Math.max(h, a), -Infinity) - low, units);
  };
  return solidPicture(facets, {
    title: part.name,
    caption: `${span('x')} × ${span('y')} × ${span('z')}`,
    from: { x: -1, y: 1 },
    tinted: () => false,
    widthMm,
  });
}

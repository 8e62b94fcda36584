import { cutterAtFaceMm, isCutFromOutside } from '../job/cutting.ts';
import type { Feature } from '../job/job.ts';
import { turned } from '../plane/move.ts';
import {
  cutFromOutside,
  cutFromWithin,
  roundedRectangle,
  type Rounded,
  type RoundedPolygon,
} from '../plane/rounded.ts';

/**
 * What a feature's cutter makes of a circle, a slot or a rectangle, nominal, from the feature's own place: a
 * few vertices with a disc round each, which tell exactly how far it reaches. Null of another shape, and of what a V
 * cutter makes, which is wider where it is deeper.
 */
export function featureRounded(feature: Feature): Rounded | null {
  const upright = uprightOf(feature);
  if (upright === null || feature.cutter.vee !== null) return null;
  const outline = {
    radiusMm: upright.radiusMm,
    vertices: turned<'blank'>(upright.vertices, feature.turnedRad),
  };
  // A drill makes its hole without going round it.
  const radiusMm = feature.cut === 'drill' ? outline.radiusMm : cutterAtFaceMm(feature);
  return isCutFromOutside(feature.cut)
    ? cutFromOutside(outline, radiusMm)
    : cutFromWithin(outline, radiusMm);
}

function uprightOf({ shape }: Feature): RoundedPolygon | null {
  switch (shape.kind) {
    case 'circle':
      return roundedRectangle(shape.diameterMm, shape.diameterMm, shape.diameterMm / 2);
    case 'slot':
      return roundedRectangle(shape.lengthMm, shape.widthMm, shape.widthMm / 2);
    case 'rectangle':
      return roundedRectangle(shape.widthMm, shape.heightMm, shape.cornerRadiusMm);
    case 'polygon':
    case 'outline':
      return null;
  }
}

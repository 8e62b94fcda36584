import { invariant, unreachable } from '../num/invariant.ts';
import { featurePath } from '../job/feature-path.ts';
import type { Feature } from '../job/job.ts';
import { grown } from '../plane/clip.ts';
import { hullOf, isConvex } from '../plane/convex.ts';
import { turned } from '../plane/move.ts';
import type { Outline } from '../plane/outline.ts';
import { flattened } from '../plane/path-measure.ts';
import {
  cornersOf,
  cutFromOutside,
  cutFromWithin,
  roundedRectangle,
  type Rounded,
  type RoundedPolygon,
} from '../plane/rounded.ts';

/** Arcs of polygons and drawings are taken as chords that stray from them by this much at most, mm. */
export const OUTLINE_CHORD_MM = 1e-3;

/** A drawn outline is shrunk by this much less than the cutter's radius, so that one as wide as the cutter stays. */
const SPARE_MM = 1e-3;

/** What a feature's cutter makes of its outline, nominal, from the feature's own place. */
export interface FeatureOutline {
  /** The outline itself, or, of a hollow one, what a rubber band round it would enclose. */
  readonly rounded: Rounded;
  readonly isConvex: boolean;
}

export function featureOutline(feature: Feature): FeatureOutline {
  const { shape } = feature;
  switch (shape.kind) {
    case 'circle':
      return simple(
        feature,
        roundedRectangle(shape.diameterMm, shape.diameterMm, shape.diameterMm / 2),
      );
    case 'slot':
      return simple(feature, roundedRectangle(shape.lengthMm, shape.widthMm, shape.widthMm / 2));
    case 'rectangle':
      return simple(feature, roundedRectangle(shape.widthMm, shape.heightMm, shape.cornerRadiusMm));
    case 'polygon':
    case 'outline':
      return drawn(feature);
    default:
      return unreachable(shape);
  }
}

/** Radius of the cutter where it meets the face, mm: a V cutter's follows from its depth. */
export function cutterAtFaceMm({ cutter, depthMm }: Feature): number {
  return cutter.vee === null
    ? cutter.diameterMm / 2
    : depthMm * Math.tan(cutter.vee.includedRad / 2);
}

function simple(feature: Feature, upright: RoundedPolygon): FeatureOutline {
  const outline = {
    radiusMm: upright.radiusMm,
    vertices: turned<'blank'>(upright.vertices, feature.turnedRad),
  };
  // A drill makes its hole without going round it.
  const radiusMm = feature.cut === 'drill' ? outline.radiusMm : cutterAtFaceMm(feature);
  const rounded =
    feature.cut === 'profile-outside'
      ? cutFromOutside(outline, radiusMm)
      : cutFromWithin(outline, radiusMm);
  return { rounded, isConvex: true };
}

function drawn(feature: Feature): FeatureOutline {
  const path = featurePath({ ...feature, at: { x: 0, y: 0 } });
  const outline = flattened(path, OUTLINE_CHORD_MM);
  const convex = isConvex(outline, OUTLINE_CHORD_MM);
  const radiusMm = cutterAtFaceMm(feature);
  if (feature.cut === 'profile-outside') {
    const { core, ...rest } = cutFromOutside({ vertices: outline, radiusMm: 0 }, radiusMm);
    return { rounded: { core: hullOf(core), ...rest }, isConvex: convex };
  }
  const roundMm = radiusMm - SPARE_MM;
  const axis: Outline<'blank'>[] = grown([outline], -roundMm, OUTLINE_CHORD_MM);
  invariant(axis.length > 0, `the cutter of ${feature.name} does not fit into its outline`);
  return {
    rounded: {
      core: cornersOf(hullOf(axis.flat())),
      discMm: 0,
      roundMm,
      cornerMm: roundMm,
    },
    isConvex: convex,
  };
}

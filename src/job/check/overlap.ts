import { grown, intersectionOf } from '../../plane/clip.ts';
import { signedAreaMm2 } from '../../plane/measure.ts';
import type { Outline } from '../../plane/outline.ts';
import { flattened } from '../../plane/path-measure.ts';
import { featurePath } from '../feature-path.ts';
import type { Feature } from '../job.ts';

const CHORD_MM = 0.01;
/** Less than this is two outlines that touch, mm2: what the chords make of a few mm of shared edge. */
const TOUCHING_MM2 = 0.1;

/** Whether what two features take away lies over each other, seen from the front. */
export const overlapInPlan = (a: Feature, b: Feature): boolean =>
  intersectionOf(takenBy(a), takenBy(b)).reduce((sum, loop) => sum + signedAreaMm2(loop), 0) >
  TOUCHING_MM2;

/** What a feature takes away; a profile only takes as wide a groove as its cutter. Holes run clockwise. */
function takenBy(feature: Feature): readonly Outline<'blank'>[] {
  const outline = flattened(featurePath(feature), CHORD_MM);
  const { cut, cutter } = feature;
  if (cut === 'profile-outside')
    return [...grown([outline], cutter.diameterMm, CHORD_MM), outline.toReversed()];
  if (cut === 'profile-inside')
    return [
      outline,
      ...grown([outline], -cutter.diameterMm, CHORD_MM).map((loop) => loop.toReversed()),
    ];
  return [outline];
}

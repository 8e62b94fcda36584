import { grown, intersectionOf } from '../../plane/clip.ts';
import { signedAreaMm2 } from '../../plane/measure.ts';
import type { Outline } from '../../plane/outline.ts';
import { flattened } from '../../plane/path-measure.ts';
import { cutterAtFaceMm, isCutFromOutside } from '../cutting.ts';
import { featurePath } from '../feature-path.ts';
import type { Feature } from '../job.ts';

const CHORD_MM = 0.01;
/** After so many the radius is known to a thousandth of itself. */
const HALVINGS = 10;
/** Less than this is two outlines that touch, mm2: what the chords make of a few mm of shared edge. */
const TOUCHING_MM2 = 0.1;

/** Whether what two features take away lies over each other, seen from the front. */
export const overlapInPlan = (a: Feature, b: Feature): boolean =>
  intersectionOf(takenBy(a), takenBy(b)).reduce((sum, loop) => sum + signedAreaMm2(loop), 0) >
  TOUCHING_MM2;

/** Radius of the largest circle within what both take away, mm; 0 when they only touch. */
export function roundWithinMm(a: Feature, b: Feature): number {
  const shared = intersectionOf(takenBy(a), takenBy(b));
  const areaMm2 = shared.reduce((sum, loop) => sum + signedAreaMm2(loop), 0);
  let [within, beyond] = [0, Math.sqrt(Math.max(0, areaMm2) / Math.PI)];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (within + beyond) / 2;
    if (grown(shared, -middle, CHORD_MM).length > 0) within = middle;
    else beyond = middle;
  }
  return within;
}

/** What a feature takes away; a profile only takes as wide a groove as its cutter. Holes run clockwise. */
function takenBy(feature: Feature): readonly Outline<'blank'>[] {
  const outline = flattened(featurePath(feature), CHORD_MM);
  const { cut, cutter } = feature;
  if (isCutFromOutside(cut))
    return [...grown([outline], 2 * cutterAtFaceMm(feature), CHORD_MM), outline.toReversed()];
  if (cut === 'profile-inside')
    return [
      outline,
      ...grown([outline], -cutter.diameterMm, CHORD_MM).map((loop) => loop.toReversed()),
    ];
  return [outline];
}

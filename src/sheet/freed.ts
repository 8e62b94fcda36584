import type { Feature, Job } from '../job/job.ts';
import { limitsOf } from '../num/spread-of.ts';
import { outlineOf } from '../sweep/feature-outline.ts';

/**
 * True when a cut can set a piece free: a profile right through, or, of two cuts that meet from both
 * faces and one of which is a profile, the one of the second placing; with the thinnest blank and 1 mm of
 * skin as no hold at all.
 */
export function freesPiece(job: Job, feature: Feature): boolean {
  if (isProfile(feature) && feature.through) return true;
  const thinnestMm =
    job.blank.thickMm + Math.min(0, limitsOf(job.blank.thickSpread.distribution)[0]);
  return job.features.some(
    (other) =>
      other.face === job.first &&
      feature.face !== job.first &&
      (isProfile(feature) || isProfile(other)) &&
      !isFreeAlready(other) &&
      feature.depthMm + other.depthMm >= thinnestMm - NO_HOLD_MM &&
      overlap(feature, other),
  );
}

const NO_HOLD_MM = 1;

const isProfile = ({ cut }: Feature): boolean =>
  cut === 'profile-outside' || cut === 'profile-inside';

/** What a profile right through sets free is free by itself; a pocket that meets it frees nothing more. */
const isFreeAlready = (other: Feature): boolean => isProfile(other) && other.through;

/** Whether the rectangles around two outlines, one cutter wider, overlap: rather warn once too often. */
function overlap(one: Feature, other: Feature): boolean {
  const [a, b] = [boxOf(one), boxOf(other)];
  return a.x[0] < b.x[1] && b.x[0] < a.x[1] && a.y[0] < b.y[1] && b.y[0] < a.y[1];
}

function boxOf(feature: Feature): Record<'x' | 'y', readonly [number, number]> {
  const outline = outlineOf(feature, feature.cutter.diameterMm);
  const reach = feature.cutter.diameterMm;
  const along = (axis: 'x' | 'y'): readonly [number, number] => {
    const places = outline.map((point) => point[axis]);
    return [Math.min(...places) - reach, Math.max(...places) + reach];
  };
  return { x: along('x'), y: along('y') };
}

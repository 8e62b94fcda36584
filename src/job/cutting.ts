import { tangentOf } from '../num/elementary.ts';
import type { Cut, Feature } from './job.ts';

/** Radius of the cutter where it meets the face, mm: a V cutter's follows from its depth. */
export function cutterAtFaceMm({ cutter, depthMm }: Feature): number {
  return cutter.vee === null
    ? cutter.diameterMm / 2
    : depthMm * tangentOf(cutter.vee.includedRad / 2);
}

/** Whether the cutter runs round the outline, so that what lies within it is left. */
export const isCutFromOutside = (cut: Cut): boolean =>
  cut === 'profile-outside' || cut === 'chamfer-outside';

export const isChamfer = (cut: Cut): boolean => cut === 'chamfer' || cut === 'chamfer-outside';

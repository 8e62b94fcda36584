import { ringPlan, type RingPlan } from '../plane/ring-plan.ts';
import { cutterAtFaceMm, isCutFromOutside } from './cutting.ts';
import { featurePath } from './feature-path.ts';
import type { Feature } from './job.ts';

/** What a feature's cutter makes of its outline, from the feature's own place; null when it does not fit in. */
export function outlinePlan(feature: Feature): RingPlan | null {
  const path = featurePath({ ...feature, at: { x: 0, y: 0 } });
  const side = isCutFromOutside(feature.cut) ? 'outside' : 'within';
  return ringPlan(path, side, cutterAtFaceMm(feature));
}

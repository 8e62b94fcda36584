import { cutterAtFaceMm } from '../cutting.ts';
import type { Feature } from '../job.ts';
import { outlinePlan } from '../outline-plan.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { RawFeature } from '../schema/raw-job.ts';
import { said } from '../text/said.ts';

/** Whether there is room for the cutter anywhere within a polygon or a drawn outline. */
export function checkFits(
  context: Context,
  feature: Feature,
  raw: RawFeature,
  instead: string,
): void {
  const key = feature.shape.kind;
  if ((key !== 'polygon' && key !== 'outline') || outlinePlan(feature) !== null) return;
  const wideMm = said(2 * cutterAtFaceMm(feature));
  fault(
    context,
    [raw, key],
    `${feature.cutter.name} cuts ${wideMm} mm wide, and ${feature.name} is narrower everywhere`,
    instead,
  );
}

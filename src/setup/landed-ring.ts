import { invariant } from '../num/invariant.ts';
import { outlinePlan } from '../job/outline-plan.ts';
import type { Feature } from '../job/job.ts';
import { landingRing } from '../plane/ring-landing.ts';
import type { Ring } from '../plane/ring.ts';
import type { RingGrowth } from '../plane/wall-place.ts';
import type { AffineLanding } from './affine-landing.ts';
import type { Columns } from './columns.ts';
import { featureGrowth } from './feature-growth.ts';
import type { Heights } from './heights.ts';

/** Where the outline of one feature of any shape lands, blank frame, as cut in the first placing. */
export interface LandedRing {
  /** Lies nominally until it is loaded. */
  readonly ring: Ring;
  /** Needs the feature's own landing and, of a V cutter, the heights of the same trial. */
  readonly load: (draws: Float64Array, i: number) => void;
}

/**
 * Source: registration.md rule 9: the way of the cutter's axis goes through the machine's map and the
 * pose, the cutter stays round. A V cutter's growth is taken where its axis is.
 */
export function landedRing(
  feature: Feature,
  landing: AffineLanding,
  heights: () => Heights,
  columns: Columns,
): LandedRing {
  const { at } = feature;
  const plan = outlinePlan(feature);
  invariant(plan !== null, `the cutter of ${feature.name} does not fit into its outline`);
  const { ring, land } = landingRing(plan, at);
  const growth = featureGrowth(feature, heights, columns);
  const { byDepth } = growth;
  const more: RingGrowth | null =
    byDepth === null
      ? null
      : { at: (x, y) => byDepth.at({ x: at.x + x, y: at.y + y }), perX: 0, perY: 0 };
  return {
    ring,
    load: (draws, i) => {
      growth.load(draws, i);
      if (more !== null && byDepth !== null) {
        more.perX = byDepth.perX();
        more.perY = byDepth.perY();
      }
      land({ off: landing.off, growsMm: growth.allRoundMm(), more });
    },
  };
}

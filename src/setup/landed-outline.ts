import { isCutFromOutside } from '../job/cutting.ts';
import type { Feature } from '../job/job.ts';
import type { Rounded } from '../plane/rounded.ts';
import { newLanded, type Landed } from '../plane/support.ts';
import type { AffineLanding } from './affine-landing.ts';
import type { Columns } from './columns.ts';
import { featureGrowth } from './feature-growth.ts';
import type { Heights } from './heights.ts';

/** Where the outline of a circle, a slot or a rectangle lands, blank frame, as cut in the first placing. */
export interface LandedOutline {
  readonly landed: Landed;
  /** Needs the feature's own landing of the same trial. */
  readonly load: (draws: Float64Array, i: number) => void;
}

/**
 * Source: registration.md rule 9: the outline goes through the machine's map and the pose, the cutter
 * stays round and grows.
 */
export function landedOutline(
  feature: Feature,
  { core, discMm, roundMm, cornerMm }: Rounded,
  landing: AffineLanding,
  heights: () => Heights,
  columns: Columns,
): LandedOutline {
  const { at } = feature;
  const landed = newLanded(core.length);
  landed.discMm = discMm;
  const sign = isCutFromOutside(feature.cut) ? -1 : 1;
  const growth = featureGrowth(feature, heights, columns);
  return {
    landed,
    load: (draws, i) => {
      growth.load(draws, i);
      const { off } = landing;
      const [xx, xy, yx, yy] = [off[2]!, off[3]!, off[4]!, off[5]!];
      const grows = growth.allRoundMm();
      // What an outside profile leaves keeps its corners as sharp as they are while it shrinks.
      const sharp = sign === 1 ? 0 : Math.max(0, grows - cornerMm);
      landed.roundMm = roundMm + sign * grows + sharp;
      landed.map[0] = xx;
      landed.map[1] = xy;
      landed.map[2] = yx;
      landed.map[3] = yy;
      for (let k = 0; k < core.length; k++) {
        const { x, y, outX, outY } = core[k]!;
        const [qx, qy] = [x - sharp * outX, y - sharp * outY];
        landed.x[k] = at.x + qx + off[0]! + xx * qx + xy * qy;
        landed.y[k] = at.y + qy + off[1]! + yx * qx + yy * qy;
      }
    },
  };
}

import { girthOf } from '../plane/rounded.ts';
import { newLanded, type Landed } from '../plane/support.ts';
import type { Feature } from '../job/job.ts';
import type { AffineLanding } from './affine-landing.ts';
import type { Columns } from './columns.ts';
import { featureOutline } from './feature-rounded.ts';
import type { Heights } from './heights.ts';

/** Where the outline of one feature lands, blank frame, as cut in the first placing. */
export interface LandedOutline {
  readonly landed: Landed;
  readonly isConvex: boolean;
  /** Distance round the nominal outline, mm. */
  readonly girthMm: number;
  /** Needs the feature's own landing and, of a V cutter, the heights of the same trial. */
  readonly load: (draws: Float64Array, i: number) => void;
}

/** Mm over which a depth's slope is taken; the cup is a parabola, whose slope any distance tells. */
const SLOPE_MM = 8;

/**
 * Source: registration.md rules 8 and 9: the outline goes through the machine's map and the pose, the
 * cutter stays round and larger by its radius error, less what it is pushed off; a V cutter's outline grows
 * by the tangent of its half angle times what it goes deeper there. Across one disc the
 * depth is taken as a plane: a cup's curve within a round V groove is left out.
 */
export function landedOutline(
  feature: Feature,
  landing: AffineLanding,
  heights: () => Heights,
  columns: Columns,
): LandedOutline {
  const { rounded, isConvex } = featureOutline(feature);
  const { core, discMm, cornerMm } = rounded;
  const { at, cutter } = feature;
  const landed = newLanded(core.length);
  const sign = feature.cut === 'profile-outside' ? -1 : 1;
  const radius = columns.of({ kind: 'cutter-radius', cutter: cutter.name });
  const push = columns.of({ kind: 'push-off', cut: `feature ${feature.name}` });
  const flat = cutter.vee === null ? null : columns.of({ kind: 'tip-flat', cutter: cutter.name });
  const tangent = cutter.vee === null ? 0 : sign * Math.tan(cutter.vee.includedRad / 2);
  const depth = cutter.vee === null ? null : heights().depthOf(feature);
  const places = core.map(({ x, y }) => ({ x: at.x + x, y: at.y + y }));
  const beside = {
    left: { x: at.x - SLOPE_MM, y: at.y },
    right: { x: at.x + SLOPE_MM, y: at.y },
    below: { x: at.x, y: at.y - SLOPE_MM },
    above: { x: at.x, y: at.y + SLOPE_MM },
  };
  return {
    landed,
    isConvex,
    girthMm: girthOf(rounded),
    load: (draws, i) => {
      const { off } = landing;
      const [xx, xy, yx, yy] = [off[2]!, off[3]!, off[4]!, off[5]!];
      const tip = flat === null ? 0 : draws[flat + i]! / 2;
      const grows = draws[radius + i]! - draws[push + i]! + tip;
      // What an outside profile leaves keeps its corners as sharp as they are while it shrinks.
      const sharp = sign === 1 ? 0 : Math.max(0, grows - cornerMm);
      landed.roundMm = rounded.roundMm + sign * grows + sharp;
      landed.discMm = discMm;
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
      if (depth === null) return;
      depth.load(draws, i);
      for (let k = 0; k < core.length; k++) landed.more[k] = tangent * depth.deeper(places[k]!);
      const per = tangent / (2 * SLOPE_MM);
      landed.growX = per * (depth.deeper(beside.right) - depth.deeper(beside.left));
      landed.growY = per * (depth.deeper(beside.above) - depth.deeper(beside.below));
    },
  };
}

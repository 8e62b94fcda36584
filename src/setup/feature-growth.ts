import { tangentOf } from '../num/elementary.ts';
import type { Feature } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Columns } from './columns.ts';
import type { Heights } from './heights.ts';

/** By how much one feature's cutter is larger than planned; of the trial loaded last. */
export interface FeatureGrowth {
  readonly load: (draws: Float64Array, i: number) => void;
  /** All round, mm. */
  readonly allRoundMm: () => number;
  /** What a V cutter's depth adds; null of an upright cutter. */
  readonly byDepth: DepthGrowth | null;
}

export interface DepthGrowth {
  /** At a place of the blank, mm. */
  readonly at: (place: Point<'blank'>) => number;
  /** Its slopes at the feature's own place. */
  readonly perX: () => number;
  readonly perY: () => number;
}

/** Mm over which a depth's slope is taken; the cup is a parabola, whose slope any distance tells. */
const SLOPE_MM = 8;

/**
 * Source: registration.md rules 8 and 9: larger by the radius error, less what the cutter is pushed off, by
 * half the flat of a V's tip, and by the tangent of its half angle times what it goes deeper there.
 */
export function featureGrowth(
  feature: Feature,
  heights: () => Heights,
  columns: Columns,
): FeatureGrowth {
  const { at, cutter } = feature;
  const radius = columns.of({ kind: 'cutter-radius', cutter: cutter.name });
  const push = columns.of({ kind: 'push-off', cut: `feature ${feature.name}` });
  let grows = 0;
  if (cutter.vee === null)
    return {
      load: (draws, i) => {
        grows = draws[radius + i]! - draws[push + i]!;
      },
      allRoundMm: () => grows,
      byDepth: null,
    };
  const flat = columns.of({ kind: 'tip-flat', cutter: cutter.name });
  const tangent = tangentOf(cutter.vee.includedRad / 2);
  const depth = heights().depthOf(feature);
  const beside = {
    left: { x: at.x - SLOPE_MM, y: at.y },
    right: { x: at.x + SLOPE_MM, y: at.y },
    below: { x: at.x, y: at.y - SLOPE_MM },
    above: { x: at.x, y: at.y + SLOPE_MM },
  };
  const per = tangent / (2 * SLOPE_MM);
  return {
    load: (draws, i) => {
      depth.load(draws, i);
      grows = draws[radius + i]! - draws[push + i]! + draws[flat + i]! / 2;
    },
    allRoundMm: () => grows,
    byDepth: {
      at: (place) => tangent * depth.deeper(place),
      perX: () => per * (depth.deeper(beside.right) - depth.deeper(beside.left)),
      perY: () => per * (depth.deeper(beside.above) - depth.deeper(beside.below)),
    },
  };
}

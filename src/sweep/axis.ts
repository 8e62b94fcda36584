import { cutterAtFaceMm } from '../job/cutting.ts';
import type { Feature, Job } from '../job/job.ts';
import { invariant, unreachable } from '../num/invariant.ts';
import { limitsOf } from '../num/spread-of.ts';
import { grown } from '../plane/clip.ts';
import { doMeet } from '../plane/meet.ts';
import { boundsOf } from '../plane/measure.ts';
import { isWithin } from '../plane/stretch-inside.ts';
import { betweenEdgesMm, betweenOutlinesMm, toOutlineMm } from '../plane/distance.ts';
import { mapped } from '../plane/move.ts';
import type { Outline } from '../plane/outline.ts';
import { blankInLayout } from '../setup/place.ts';
import type { Placing } from '../setup/placing.ts';
import { outlineOf } from './feature-outline.ts';
import { breakThroughMm, insetSlackMm, sweepChordMm } from './numbers.ts';

/** Where the cutter's axis goes for one feature, layout frame: all over the outlines, or along them. */
export interface AxisWay {
  readonly feature: Feature;
  readonly kind: 'all-over' | 'along';
  readonly outlines: readonly Outline<'layout'>[];
  /** Lowest height of the cutter's tip above the bed, mm; negative: below the bed's surface. */
  readonly tipMm: number;
}

/** The ways of all features that are cut in this placing. */
export function axisWays(job: Job, placing: Placing): readonly AxisWay[] {
  const topMm = surfaceMm(job, placing);
  return job.features
    .filter((feature) => feature.face === placing.faceUp)
    .map((feature) => ({
      feature,
      kind: feature.cut === 'pocket' ? 'all-over' : 'along',
      outlines: visited(feature).map((outline) =>
        mapped<'blank', 'layout'>(
          outline,
          (p) => blankInLayout(job, placing.mirror, p),
          placing.mirror === 'none',
        ),
      ),
      tipMm: feature.through ? -breakThroughMm : topMm - feature.depthMm,
    }));
}

/** Height above the bed from which depths count, mm: on top, of the thinnest blank; from the bed, as drawn. */
export function surfaceMm(job: Job, { faceUp }: Placing): number {
  const zero = faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
  const thinner = Math.min(0, limitsOf(job.blank.thickSpread.distribution)[0]);
  return zero.z.on === 'top' ? job.blank.thickMm + thinner : job.blank.thickMm;
}

/** Least plan distance between the places that the axis visits and a filled outline, mm. */
export function axisDistanceMm(way: AxisWay, outline: Outline<'layout'>): number {
  invariant(way.outlines.length > 0, 'the axis visits at least one place');
  switch (way.kind) {
    case 'all-over':
      return least(way.outlines, (visited) => betweenOutlinesMm(visited, outline));
    case 'along':
      // A line that runs inside the other outline has no edge to cross.
      return least(way.outlines, (line) =>
        Math.min(betweenEdgesMm(line, outline), ...line.map((p) => toOutlineMm(p, outline))),
      );
    default:
      return unreachable(way.kind);
  }
}

/** Whether the axis comes over a filled outline, or touches it. */
export function comesOver(way: AxisWay, outline: Outline<'layout'>): boolean {
  const box = boundsOf(outline);
  return way.outlines.some((own) => {
    const its = boundsOf(own);
    if (its.lowX > box.highX || its.highX < box.lowX) return false;
    if (its.lowY > box.highY || its.highY < box.lowY) return false;
    if (isWithin(own[0]!, [outline])) return true;
    if (way.kind === 'all-over' && isWithin(outline[0]!, [own])) return true;
    return doMeet(own, outline);
  });
}

function visited(feature: Feature): readonly Outline<'blank'>[] {
  const radius = feature.cutter.diameterMm / 2;
  const outline = outlineOf(feature, sweepChordMm);
  switch (feature.cut) {
    case 'drill':
      return [[feature.at]];
    case 'profile-outside':
      return grown([outline], radius, sweepChordMm);
    case 'pocket':
    case 'profile-inside': {
      const inset = grown([outline], -(radius - insetSlackMm), sweepChordMm);
      return inset.length > 0 ? inset : [outline];
    }
    // The tip follows the outline at the chamfer's width within it or round it, which a V cutter's depth tells.
    case 'chamfer': {
      const inset = grown([outline], -(cutterAtFaceMm(feature) - insetSlackMm), sweepChordMm);
      return inset.length > 0 ? inset : [outline];
    }
    case 'chamfer-outside':
      return grown([outline], cutterAtFaceMm(feature), sweepChordMm);
    default:
      return unreachable(feature.cut);
  }
}

const least = <T>(all: readonly T[], of: (one: T) => number): number =>
  all.reduce((low, one) => Math.min(low, of(one)), Infinity);

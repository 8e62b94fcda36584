import type { DowelHoles, Job } from '../../../job/job.ts';
import { circleOutline } from '../../../plane/outline.ts';
import { moved } from '../../../plane/move.ts';
import type { Placing } from '../../../setup/placing.ts';
import { lowestPass, passesBy } from '../../../sweep/passes.ts';
import { CHORD_MM, dowelsOf } from './dowel-places.ts';

/** Every size of a dowel that the job does not give, mm. Common practice, no source. */
const NUMBERS = {
  /** In the bed: at least so deep, and at least so many diameters. */
  inBedMm: 12,
  inBedPerDiameter: 1.5,
  /** Left of the spoilboard under the hole. */
  underHoleMm: 3,
  /** In the blank, its pointed end not counted: at least so high, and so many diameters. */
  inBlankMm: 8,
  inBlankPerDiameter: 1.2,
  pointMm: 2,
  /** Below the blank's top, and below whatever passes over it. */
  belowTopMm: 1,
  belowPassMm: 2,
  /** Lower than this it no longer locates. */
  lowestMm: 4,
  /** A drill hangs out this much more than it goes in. */
  outOfNutMm: 2,
} as const;

export interface DowelSizes {
  /** Above the bed. */
  readonly standsMm: number;
  readonly inBedMm: number;
  readonly longMm: number;
  /** What a drill must reach below its nut or chuck to make the deepest of the holes. */
  readonly reachMm: number;
  /** Whether the spoilboard is thick enough for the holes. */
  readonly fitsBed: boolean;
}

/** Sizes of the dowels, all alike, for the placings in which they stand. */
export function dowelSizes(job: Job, holes: DowelHoles, standing: readonly Placing[]): DowelSizes {
  const { diameterMm, drilled } = holes;
  const { thickMm } = job.blank;
  const inBedMm = Math.max(NUMBERS.inBedMm, NUMBERS.inBedPerDiameter * diameterMm);
  const standsMm = standsOf(job, holes, standing);
  const throughMm = drilled === 'with-the-blank' ? thickMm + inBedMm : Math.max(thickMm, inBedMm);
  return {
    standsMm,
    inBedMm,
    longMm: standsMm + inBedMm,
    reachMm: throughMm + NUMBERS.outOfNutMm,
    fitsBed: inBedMm + NUMBERS.underHoleMm <= job.shop.bed.spoilboard.thickMm,
  };
}

function standsOf(job: Job, holes: DowelHoles, standing: readonly Placing[]): number {
  const { thickMm } = job.blank;
  const wanted =
    Math.max(NUMBERS.inBlankMm, NUMBERS.inBlankPerDiameter * holes.diameterMm) + NUMBERS.pointMm;
  const round = circleOutline<'layout'>(holes.diameterMm / 2, CHORD_MM);
  const passes = dowelsOf(job, holes).flatMap(({ stands }) =>
    standing.flatMap((placing) => passesBy(job, placing, moved(round, stands))),
  );
  const lowest = lowestPass(passes)?.heightMm ?? Infinity;
  const most = Math.min(wanted, thickMm - NUMBERS.belowTopMm);
  const least = Math.min(most, NUMBERS.lowestMm);
  return Math.max(least, Math.min(most, lowest - NUMBERS.belowPassMm));
}

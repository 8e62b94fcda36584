import { expectedRange } from '../num/expected-range.ts';
import type { FittedPlane, Height } from './bed-plane.ts';
import { leastSquaresPlane, rangeOf, rangeOff } from './bed-plane.ts';
import type { Estimate } from './estimate.ts';
import { readingSd } from './estimate.ts';
import { minimumZone } from './minimum-zone.ts';

/** What the readings of a bed come to, mm and tangents. */
export interface BedSurvey {
  readonly heights: readonly Height[];
  readonly plane: FittedPlane;
  /** Rises to the right, and away from the operator. */
  readonly leanX: Estimate;
  readonly leanY: Estimate;
  /** Greatest less least height as read: how far it is from parallel to the travel. */
  readonly rangeMm: number;
  /** The same off the least-squares plane, and between the two closest parallel planes. */
  readonly leastSquaresMm: number;
  readonly minimumZoneMm: number;
  /** What a truly flat bed would show, read at as many places with this gauge. */
  readonly gaugeAloneMm: number;
  /** Scatter of the bed about its plane, the gauge's own share taken off; not below 0. */
  readonly uneven: Estimate;
  readonly gaugeSdMm: number;
}

/** Null when the readings fix no plane; `doubtsOf` says why. */
export function surveyOf(heights: readonly Height[], gaugeSdMm: number): BedSurvey | null {
  const plane = leastSquaresPlane(heights);
  const zone = minimumZone(heights);
  if (plane === null || zone === null) return null;
  const one = readingSd(plane.scatterMm, plane.dof, gaugeSdMm);
  const lean = (k: 1 | 2): Estimate => ({
    value: k === 1 ? plane.leanX : plane.leanY,
    sd: one.sd * Math.sqrt(plane.unscaled[k]![k]!),
    dof: one.dof,
  });
  const square = plane.dof === 0 ? 0 : plane.scatterMm ** 2 - gaugeSdMm ** 2;
  return {
    heights,
    plane,
    leanX: lean(1),
    leanY: lean(2),
    rangeMm: rangeOf(heights),
    leastSquaresMm: rangeOff(heights, plane),
    minimumZoneMm: zone.flatnessMm,
    gaugeAloneMm: gaugeSdMm * expectedRange(heights.length),
    uneven: { value: 0, sd: Math.sqrt(Math.max(0, square)), dof: plane.dof },
    gaugeSdMm,
  };
}

import type { Band, StopsJob } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import { cannot, figure, made, mm, type Step } from './answer.ts';
import type { Knots } from './knots.ts';
import { stopNumbers } from './numbers.ts';

/** How high a stop is, where it touches, and how far its lands stand towards the blank by height. */
export interface StopHeights {
  readonly topMm: number;
  readonly band: { readonly lowMm: number; readonly highMm: number };
  readonly allowanceMm: number;
  readonly lands: Knots;
  /** How much narrower the lands are at each end, by height. */
  readonly narrowed: Knots;
  /** How far the outside is drawn in, by height. */
  readonly drawnIn: Knots;
}

/** `rim`: whether the stop goes on above a narrow band, or ends with it. */
export function stopHeights(job: StopsJob, rim: 'rim' | 'no rim'): Step<StopHeights> {
  const n = stopNumbers;
  const allowanceMm = job.stops.made.kind === 'milled-in-place' ? n.millingAllowanceMm : 0;
  const band = bandOf(job.stops.band);
  const narrow = job.stops.band.kind === 'narrow';
  const lowestMm = Math.max(n.lowestStopMm, lowestPlainMm(allowanceMm));
  if (!narrow && band.highMm < lowestMm)
    return cannot(
      `a stop ${mm(band.highMm)} high leaves no face above its chip relief`,
      `height: ${figure(lowestMm)} or more`,
    );
  if (narrow && band.lowMm < n.reliefUprightMm)
    return cannot(
      `touching from ${mm(band.lowMm)} to ${mm(band.highMm)} above the bed leaves no chip relief below`,
      `touch-height: ${figure(n.bandHalfMm + n.reliefUprightMm)} or more, or height (a plain stop) instead`,
    );
  const topMm = band.highMm + (narrow && rim === 'rim' ? n.aboveBandMm : 0);
  if (topMm > job.blank.thickMm - n.belowTopMm)
    return cannot(
      `a stop ${mm(topMm)} high stands above a blank ${mm(job.blank.thickMm)} thick, less ${mm(n.belowTopMm)}`,
      `${narrow ? 'touch-height' : 'height'}: ${figure(job.blank.thickMm - n.belowTopMm - (narrow ? n.bandHalfMm : 0))} or less`,
    );
  return made({
    topMm,
    band,
    allowanceMm,
    lands: landKnots(band, allowanceMm, topMm),
    narrowed: narrowedKnots(band, topMm),
    drawnIn,
  });
}

const drawnIn: Knots = [
  { zMm: 0, value: stopNumbers.footChamferMm },
  { zMm: stopNumbers.footChamferMm, value: 0 },
];

function bandOf(band: Band): StopHeights['band'] {
  const n = stopNumbers;
  switch (band.kind) {
    case 'plain':
      return { lowMm: n.reliefUprightMm + n.reliefBackMm, highMm: band.heightMm };
    case 'narrow':
      return {
        lowMm: band.touchHeightMm - n.bandHalfMm,
        highMm: band.touchHeightMm + n.bandHalfMm,
      };
    default:
      return unreachable(band);
  }
}

/**
 * The underside slopes at 45 degrees, so that it prints without support, and passes through the
 * final face at the foot of the band: milling the allowance off leaves the band as it should be.
 */
function landKnots(band: StopHeights['band'], allowanceMm: number, topMm: number): Knots {
  const { reliefBackMm, aboveBandBackMm } = stopNumbers;
  const backMm = Math.min(reliefBackMm, band.lowMm);
  const slopeFromMm = band.lowMm - backMm;
  const below = slopeFromMm > 0 ? [{ zMm: 0, value: -backMm }] : [];
  const rim =
    topMm > band.highMm
      ? [
          { zMm: band.highMm, value: -aboveBandBackMm },
          { zMm: topMm, value: -aboveBandBackMm },
        ]
      : [];
  return [
    ...below,
    { zMm: slopeFromMm, value: -backMm },
    { zMm: band.lowMm + allowanceMm, value: allowanceMm },
    { zMm: band.highMm, value: allowanceMm },
    ...rim,
  ];
}

/**
 * The shelf above a band must not end in the line of the flanks: a shelf without width there would
 * leave the skin open.
 */
function narrowedKnots(band: StopHeights['band'], topMm: number): Knots {
  const { rimNarrowerMm } = stopNumbers;
  return topMm > band.highMm
    ? [
        { zMm: 0, value: 0 },
        { zMm: band.highMm, value: 0 },
        { zMm: band.highMm, value: rimNarrowerMm },
        { zMm: topMm, value: rimNarrowerMm },
      ]
    : [
        { zMm: 0, value: 0 },
        { zMm: topMm, value: 0 },
      ];
}

const lowestPlainMm = (allowanceMm: number): number =>
  stopNumbers.reliefUprightMm + stopNumbers.reliefBackMm + allowanceMm + 0.5;

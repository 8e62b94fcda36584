import type { Cutter, Job, StopsJob } from '../../job/job.ts';
import { cornerAt, frontUpCorner, sidesOf } from '../../setup/place.ts';
import type { Side } from '../../setup/placing.ts';
import type { Land, StopPart } from '../stop-part.ts';

/**
 * One land milled where it stands, as the path of the cutter's centre, from the zero of milling:
 * the front-up corner of the stops.
 */
export interface LandRun {
  readonly face: Land['face'];
  /** The axis along which the cutter runs; the other one stays where it is. */
  readonly along: 'x' | 'y';
  /** In the direction that cuts climb with a spindle that turns clockwise seen from above. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Where the other axis stays: with `FINISH_MM` left on, and on the final face. */
  readonly firstPassMm: number;
  readonly lastPassMm: number;
  /** Above the bed; the lower one is the cutter's tip. */
  readonly lowMm: number;
  readonly highMm: number;
  readonly offMm: number;
}

/** What the first pass leaves for the last one, mm. Common practice, no source. */
export const FINISH_MM = 0.3;

/** What a run needs to know of a stop. */
export type MilledStop = Pick<StopPart, 'lands' | 'towardsBlank' | 'band' | 'allowanceMm'>;

export function landRuns(job: StopsJob, stop: MilledStop, cutter: Cutter): readonly LandRun[] {
  const { frontUp, backUp } = job.stops.corner;
  const sides = new Set<Side>([...sidesOf(frontUp), ...sidesOf(backUp)]);
  return landRunsOn(job, sides, stop, cutter);
}

/** The same for any job; on `sides` of the blank something stands that a run along them must not meet. */
export const landRunsOn = (
  job: Job,
  sides: ReadonlySet<Side>,
  stop: MilledStop,
  cutter: Cutter,
): readonly LandRun[] =>
  stop.lands.map((land) => runOn(job, sides, stop, land, cutter.diameterMm / 2));

function runOn(
  job: Job,
  sides: ReadonlySet<Side>,
  stop: MilledStop,
  land: Land,
  radiusMm: number,
): LandRun {
  const zero = cornerAt(job, frontUpCorner(job));
  const [one, other] = land.ends;
  const along = one.x === other.x ? 'y' : 'x';
  const across = along === 'x' ? 'y' : 'x';
  const towards = stop.towardsBlank[across];
  const face = one[across] - zero[across];
  const leftOn = Math.min(FINISH_MM, stop.allowanceMm);
  const room = between(job, sides, along, radiusMm + stop.allowanceMm);
  // One radius past each end the cutter is clear of the land.
  const low = Math.max(Math.min(one[along], other[along]) - radiusMm, room.lowMm);
  const high = Math.min(Math.max(one[along], other[along]) + radiusMm, room.highMm);
  // Climb: the stop is on the right of the way the cutter goes.
  const isForward = along === 'x' ? towards > 0 : towards < 0;
  const ends = [low - zero[along], high - zero[along]] as const;
  return {
    face: land.face,
    along,
    fromMm: isForward ? ends[0] : ends[1],
    toMm: isForward ? ends[1] : ends[0],
    firstPassMm: face + towards * (radiusMm + leftOn),
    lastPassMm: face + towards * radiusMm,
    lowMm: stop.band.lowMm,
    highMm: stop.band.highMm,
    offMm: stop.allowanceMm,
  };
}

/** How far the cutter's centre may go along an axis without cutting into a face that stands across it. */
function between(
  job: Job,
  sides: ReadonlySet<Side>,
  along: 'x' | 'y',
  clearMm: number,
): { readonly lowMm: number; readonly highMm: number } {
  const { widthMm, heightMm } = job.blank;
  const [lowSide, highSide, sizeMm] =
    along === 'x' ? (['left', 'right', widthMm] as const) : (['near', 'far', heightMm] as const);
  return {
    lowMm: sides.has(lowSide) ? clearMm : -Infinity,
    highMm: sides.has(highSide) ? sizeMm - clearMm : Infinity,
  };
}

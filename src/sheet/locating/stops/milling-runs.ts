import type { Cutter, Job, StopsJob } from '../../../job/job.ts';
import { landRuns, landRunsOn, type LandRun } from '../../../jig/program/land-runs.ts';
import type { Side } from '../../../setup/placing.ts';
import type { SheetStop } from '../../sheet-input.ts';
import { stopLetter } from './stop-badges.ts';

/** How one land of a lettered stop is milled where it stands. */
export type MillingRun = LandRun & { readonly letter: string };

export function millingRuns(
  job: StopsJob,
  stops: readonly SheetStop[],
  cutter: Cutter,
): readonly MillingRun[] {
  return lettered(stops, (stop) => landRuns(job, stop, cutter));
}

/** The same for any job; on `sides` of the blank something stands that a run along them must not meet. */
export function runsOn(
  job: Job,
  stops: readonly SheetStop[],
  cutter: Cutter,
  sides: ReadonlySet<Side>,
): readonly MillingRun[] {
  return lettered(stops, (stop) => landRunsOn(job, sides, stop, cutter));
}

const lettered = (
  stops: readonly SheetStop[],
  runs: (stop: SheetStop) => readonly LandRun[],
): readonly MillingRun[] =>
  stops.flatMap((stop, i) => runs(stop).map((run) => ({ letter: stopLetter(i), ...run })));

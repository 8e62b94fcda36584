import type { Cutter, StopsJob } from '../job/job.ts';
import { landRuns, type LandRun } from '../jig/program/land-runs.ts';
import { stopLetter } from './badges.ts';
import type { SheetStop } from './sheet-input.ts';

/** How one land of a lettered stop is milled where it stands. */
export type MillingRun = LandRun & { readonly letter: string };

export function millingRuns(
  job: StopsJob,
  stops: readonly SheetStop[],
  cutter: Cutter,
): readonly MillingRun[] {
  return stops.flatMap((stop, i) =>
    landRuns(job, stop, cutter).map((run) => ({ letter: stopLetter(i), ...run })),
  );
}

import type { Holding } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import type { Body } from '../sweep/body.ts';
import type { Program } from '../sweep/program/program.ts';

/** Bodies on the bed, in each placing; null when what locates cannot be made there. */
export type Standing = {
  readonly frontUp: readonly Body[];
  readonly backUp: readonly Body[];
} | null;

/** All that a plan is made from: the programs have been read, and what locates can be asked for. */
export interface HoldInput {
  readonly job: Job;
  readonly holding: Holding;
  readonly placings: { readonly frontUp: Placing; readonly backUp: Placing };
  /** What locates, where a job wants it; the search for room asks for other places of the blank too. */
  readonly standingOf: (job: Job) => Standing;
  readonly programs: { readonly frontUp: Program | null; readonly backUp: Program | null };
}

import { holdPlan, type HoldPlan } from '../hold/plan.ts';
import { bodiesOf } from '../jig/stops.ts';
import type { Holding, ProgramFile } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import { placingsOf } from '../setup/place.ts';
import type { Body } from '../sweep/body.ts';
import { readProgram } from '../sweep/program/read.ts';
import type { Program } from '../sweep/program/program.ts';
import { stopsFor } from './build-job.ts';
import { Refusal } from './exit.ts';

export interface HeldJob {
  readonly plan: HoldPlan;
  /** What the plan could not take into account. */
  readonly notes: readonly string[];
}

/** The hold-down plan of a job, with its stops standing and its programs read; `tell` hears how far long ones are. */
export function holdJob(job: Job, holding: Holding, tell: (text: string) => void): HeldJob {
  const notes: string[] = [];
  const standing = stopBodies(job, notes);
  const read = (file: ProgramFile | null): Program | null =>
    file === null
      ? null
      : readProgram(new TextDecoder().decode(file.bytes), {
          units: job.shop.units === 'inch' ? 'inch' : 'mm',
          onLines: (done, all) => {
            if (done % TELL_EACH === 0) tell(`${file.file}: ${done} of ${all} lines read`);
          },
        });
  const plan = holdPlan({
    job,
    holding,
    placings: placingsOf(job),
    standing: { frontUp: standing, backUp: standing },
    programs: {
      frontUp: read(holding.programs.frontUp),
      backUp: read(holding.programs.backUp),
    },
  });
  return { plan, notes };
}

/** Lines between two words about how far it is. */
const TELL_EACH = 50_000;

function stopBodies(job: Job, notes: string[]): readonly Body[] {
  try {
    return stopsFor(job).parts.flatMap(bodiesOf);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    notes.push(`the stops are not looked at, since they cannot be made: ${error.message}`);
    return [];
  }
}

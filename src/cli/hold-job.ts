import { advised } from '../hold/advised.ts';
import type { HoldInput, Standing } from '../hold/hold-input.ts';
import { holdPlan, type HoldPlan } from '../hold/plan.ts';
import { bodiesOf } from '../jig/stops.ts';
import type { Holding, ProgramFile } from '../job/holding.ts';
import type { Face, Job } from '../job/job.ts';
import { placingsOf } from '../setup/place.ts';
import { standingIn } from '../sheet/locating/way-of.ts';
import type { Body } from '../sweep/body.ts';
import { readProgram } from '../sweep/program/read.ts';
import type { Program } from '../sweep/program/program.ts';
import { Refusal } from './exit.ts';
import { stopsFor } from './stops-for.ts';

export interface HeldJob {
  readonly plan: HoldPlan;
  /** What the plan could not take into account. */
  readonly notes: readonly string[];
}

/** The hold-down plan of a job, with its stops standing and its programs read; `tell` hears how far long ones are. */
export function holdJob(job: Job, holding: Holding, tell: (text: string) => void): HeldJob {
  const notes: string[] = [];
  const here = standing(job);
  if (typeof here === 'string')
    notes.push(`the stops are not looked at, since they cannot be made: ${here}`);
  const standingOf = (other: Job): Standing => {
    const there = other === job ? here : standing(other);
    return typeof there === 'string' ? null : there;
  };
  const read = (file: ProgramFile | null): Program | null =>
    file === null
      ? null
      : readProgram(new TextDecoder().decode(file.bytes), {
          units: job.shop.units === 'inch' ? 'inch' : 'mm',
          onLines: (done, all) => {
            if (done % TELL_EACH === 0) tell(`${file.file}: ${done} of ${all} lines read`);
          },
        });
  const input: HoldInput = {
    job,
    holding,
    placings: placingsOf(job),
    standingOf,
    programs: {
      frontUp: read(holding.programs.frontUp),
      backUp: read(holding.programs.backUp),
    },
  };
  return { plan: advised(input, holdPlan(input)), notes };
}

/** Lines between two words about how far it is. */
const TELL_EACH = 50_000;

/** What locates a job's blank, in each placing; a reason when it cannot be made. */
function standing(job: Job): Standing | string {
  if (job.locating !== 'stops') {
    const bodies = (face: Face): readonly Body[] =>
      standingIn(job, placingsOf(job))
        .filter(({ placings }) => placings.includes(face))
        .map(({ body }) => body);
    return { frontUp: bodies('front'), backUp: bodies('back') };
  }
  try {
    const bodies = stopsFor(job).parts.flatMap(bodiesOf);
    return { frontUp: bodies, backUp: bodies };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return error.message;
  }
}

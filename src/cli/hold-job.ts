import { holdPlan, type HoldPlan } from '../hold/plan.ts';
import { bodiesOf } from '../jig/stops.ts';
import type { Holding, ProgramFile } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import { blankInLayout, placingsOf } from '../setup/place.ts';
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
  refuseOtherPlace(job);
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

/** Clamps are laid round one place on the bed, with nothing round it. @throws Refusal for a job where it is otherwise. */
function refuseOtherPlace(job: Job): void {
  const { backUp } = placingsOf(job);
  const corner = blankInLayout(job, backUp.mirror, { x: 0, y: 0 });
  const { widthMm, heightMm } = job.blank;
  const isSame =
    Math.min(Math.abs(corner.x), Math.abs(corner.x - widthMm)) < SAME_PLACE_MM &&
    Math.min(Math.abs(corner.y), Math.abs(corner.y - heightMm)) < SAME_PLACE_MM;
  if (job.locating !== 'nest' && isSame) return;
  throw new Refusal(
    job.locating === 'nest'
      ? `${job.name}: holding down in a nest is not planned in this version`
      : `${job.name}: the blank lies elsewhere when it is turned over, and that is not planned in this version; dowels on its middle line can be`,
  );
}

/** Places of one blank differ by no more from rounding, mm. */
const SAME_PLACE_MM = 1e-6;

/** Lines between two words about how far it is. */
const TELL_EACH = 50_000;

function stopBodies(job: Job, notes: string[]): readonly Body[] {
  if (job.locating !== 'stops') {
    notes.push('what locates the blank (dowels, a nest) is not looked at: keep it clear yourself');
    return [];
  }
  try {
    return stopsFor(job).parts.flatMap(bodiesOf);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    notes.push(`the stops are not looked at, since they cannot be made: ${error.message}`);
    return [];
  }
}

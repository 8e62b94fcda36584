import type { ProgramFile } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import type { Cuts } from '../sweep/keep-clear.ts';
import { placedMoves, type PlacedMove } from '../sweep/placed-moves.ts';
import { programAgainstJob, type ProgramFit } from '../sweep/program-against-job.ts';
import type { Program } from '../sweep/program/program.ts';

export interface CheckedProgram {
  readonly file: ProgramFile;
  readonly program: Program;
  /** Null when the program is not sound: then it is not checked. */
  readonly fit: ProgramFit | null;
}

/** Whether a program is the right one for a placing; null when there is none. */
export function checkedProgram(
  job: Job,
  placing: Placing,
  file: ProgramFile | null,
  program: Program | null,
): CheckedProgram | null {
  if (file === null || program === null) return null;
  if (!program.isSound) return { file, program, fit: null };
  const moves = placedMoves(job, placing, program, cutterOf(file));
  return { file, program, fit: programAgainstJob(job, placing, moves) };
}

/** A program that is not sound may do anything: then what the features ask for is looked at. */
export const cutsOf = (checked: CheckedProgram | null): Cuts =>
  checked?.program.isSound === true
    ? { by: 'program', program: checked.program, cutterOf: cutterOf(checked.file) }
    : { by: 'features' };

const cutterOf =
  ({ cutter, tools }: ProgramFile) =>
  (tool: number | null) =>
    (tool === null ? undefined : tools.get(tool)) ?? cutter;

/** A through cut goes a little into the spoilboard, mm. Common practice, no source. */
const DEEPER_MM = 1;

/** How much deeper a program cuts than the job asks for, mm; 0 when no more than a through cut does. */
export function tooDeepMm({ deepestMm, deepestWantedMm }: ProgramFit): number {
  const deeper = deepestMm - deepestWantedMm;
  return deeper > DEEPER_MM ? deeper : 0;
}

/** Whether a program cuts what the job says, all of it, no deeper. */
export const isRight = ({ fit }: CheckedProgram): boolean =>
  fit !== null &&
  (fit.against.kind === 'agrees' || fit.against.kind === 'agrees-either-way') &&
  fit.missed.length === 0 &&
  tooDeepMm(fit) === 0;

export const isSoundProgram = (checked: CheckedProgram | null): boolean =>
  checked?.program.isSound === true;

/** The moves of a program on the bed. */
export const placedOf = (
  job: Job,
  placing: Placing,
  { file, program }: CheckedProgram,
): readonly PlacedMove[] => placedMoves(job, placing, program, cutterOf(file));

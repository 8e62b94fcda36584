import type { Cutter, Job, StopsJob } from '../../job/job.ts';
import { unreachable } from '../../num/invariant.ts';
import type { Body } from '../../sweep/body.ts';
import { figure, type Cannot, type Step } from '../answer.ts';
import { given } from '../parts/size.ts';
import { fenceAlone } from '../fence-job.ts';
import { testPiece } from '../test-piece/layout.ts';
import { wasteCombs } from '../test-piece/waste-combs.ts';
import { testPrograms } from '../test-piece/programs.ts';
import { dowelHolesIn } from '../../job/located.ts';
import type { Placings } from '../../sweep/clearances.ts';
import { cutNest } from '../nest/nest-program.ts';
import type { StopPart } from '../stop-part.ts';
import { bodiesOf } from '../stops.ts';
import { airCut } from './air-cut.ts';
import { programClash } from './check.ts';
import { dowelGrid } from './dowel-grid.ts';
import { emptyBed, type InBed } from './in-bed.ts';
import { boreDowelHoles } from './dowel-holes.ts';
import { millStops } from './mill-stops.ts';
import { borePinHoles } from './pin-holes.ts';
import type { Program } from './program.ts';
import { stopFromSheet } from './stop-from-sheet.ts';
import { skim, skimmingCutter } from './skim.ts';

/** A program and what stands on the bed while it runs. */
export interface PlannedProgram {
  readonly program: Program;
  readonly cutter: Cutter;
  readonly bodies: readonly Body[];
}

/** A program that is wanted and must not be written, and why. */
export interface NoProgram extends Cannot {
  /** Asked for by name under `jig:`, or only following from how the stops are made. */
  readonly wanted: 'asked for' | 'follows';
}

export interface ProgramsAnswer {
  /** Each with its air cut, both checked against travel and bodies. */
  readonly programs: readonly { readonly cut: PlannedProgram; readonly air: Program }[];
  readonly refused: readonly NoProgram[];
}

interface Wish {
  readonly step: Step<PlannedProgram>;
  readonly wanted: NoProgram['wanted'];
}

/** Every program that the job wants for its jig. */
export function programsOf(
  job: Job,
  placings: Placings,
  stops: readonly StopPart[],
  bed: InBed = emptyBed,
): ProgramsAnswer {
  const bodies = stops.flatMap(bodiesOf);
  const wishes: Wish[] = [];
  const stopped = job.locating === 'stops' ? job : fenceAlone(job);
  if (stopped !== null && stops.length > 0) wishes.push(...forStops(stopped, stops, bodies));
  const dowels = boreDowelHoles(job, placings);
  if (dowels !== null) wishes.push({ step: underClamps(job, dowels, bed), wanted: 'follows' });
  const nest = cutNest(job, placings);
  if (nest !== null) wishes.push({ step: onEmptyBed(nest), wanted: 'follows' });
  if (job.jig['dowel-grid'] !== undefined)
    wishes.push({
      step: onEmptyBed(dowelGrid(job, job.jig['dowel-grid'], bed)),
      wanted: 'asked for',
    });
  const sheet = job.jig['stops-from-sheet'];
  if (sheet !== undefined)
    wishes.push(
      ...stops.map((stop) => ({
        step: onEmptyBed(stopFromSheet(job, stop, sheet)),
        wanted: 'asked for' as const,
      })),
    );
  if (job.jig.skim !== undefined) wishes.push({ step: skimming(job), wanted: 'asked for' });
  wishes.push(
    ...testing(job, placings, stops, bodies).map((step) => ({
      step,
      wanted: 'asked for' as const,
    })),
  );
  wishes.push(
    ...combing(job, placings, stops, bodies, bed).map((step) => ({
      step,
      wanted: 'asked for' as const,
    })),
  );
  const programs: ProgramsAnswer['programs'][number][] = [];
  const refused: NoProgram[] = [];
  for (const { step, wanted } of wishes) {
    if (step.kind === 'cannot') {
      refused.push({ ...step, wanted });
      continue;
    }
    const { program, cutter, bodies: there } = step.value;
    const air = airCut(program);
    const clash =
      programClash(job, program, cutter, there) ?? programClash(job, air, cutter, there);
    if (clash === null) programs.push({ cut: step.value, air });
    else refused.push({ ...clash, wanted });
  }
  return { programs, refused };
}

/** What the stops want before they can stand or be used. */
function forStops(
  job: StopsJob,
  stops: readonly StopPart[],
  bodies: readonly Body[],
): readonly Wish[] {
  const { made } = job.stops;
  switch (made.kind) {
    case 'milled-in-place':
      return [
        {
          step: planned(millStops(job, stops, made.cutter), made.cutter, bodies),
          wanted: 'follows',
        },
      ];
    case 'on-bed-pins':
      return [{ step: onEmptyBed(borePinHoles(job, stops)), wanted: 'follows' }];
    case 'set-by-hand':
      return [];
    default:
      return unreachable(made);
  }
}

const planned = (
  step: Step<Program>,
  cutter: Cutter,
  bodies: readonly Body[],
): Step<PlannedProgram> =>
  step.kind === 'cannot' ? step : { kind: 'made', value: { program: step.value, cutter, bodies } };

const onEmptyBed = (
  step: Step<{ readonly program: Program; readonly cutter: Cutter }>,
): Step<PlannedProgram> =>
  step.kind === 'cannot' ? step : { kind: 'made', value: { ...step.value, bodies: [] } };

/** Holes that are bored through the blank are bored while it is held down for the first placing. */
const underClamps = (
  job: Job,
  step: Step<{ readonly program: Program; readonly cutter: Cutter }>,
  bed: InBed,
): Step<PlannedProgram> =>
  step.kind === 'cannot' || dowelHolesIn(job)?.drilled !== 'with-the-blank'
    ? onEmptyBed(step)
    : {
        kind: 'made',
        value: clamped(step.value, bed.clamps?.[job.first === 'front' ? 'frontUp' : 'backUp']),
      };

/** The program among the clamps of its placing, high enough over them; null: nobody planned any. */
export function clamped(
  { program, cutter }: { readonly program: Program; readonly cutter: Cutter },
  clamps: readonly Body[] | undefined,
  bodies: readonly Body[] = [],
): PlannedProgram {
  const here = [...bodies, ...(clamps ?? [])];
  const highestMm = here.reduce((most, body) => Math.max(most, body.highMm), program.highestMm);
  const byMm = highestMm - program.highestMm;
  return {
    cutter,
    bodies: here,
    program: {
      ...program,
      highestMm,
      safeMm: program.safeMm + byMm,
      witness: {
        ...program.witness,
        at: { ...program.witness.at, z: program.witness.at.z + byMm },
      },
      cautions: [
        ...program.cautions,
        clamps === undefined
          ? 'Clamps are not known to this program. Keep them clear of its whole way.'
          : 'It was checked against the clamps of the hold-down plan, where they stand there.',
      ],
    },
  };
}

function skimming(job: Job): Step<PlannedProgram> {
  const cutter = skimmingCutter(job);
  if (cutter.kind === 'cannot') return cutter;
  const sizes = job.jig.skim!;
  const laneMm = sizes.lane ?? Number(figure(cutter.value.diameterMm * LANE_PER_DIAMETER));
  return planned(
    skim(job, cutter.value, { depthMm: given(sizes.depth), laneMm }),
    cutter.value,
    [],
  );
}

function testing(
  job: Job,
  placings: Placings,
  stops: readonly StopPart[],
  bodies: readonly Body[],
): readonly Step<PlannedProgram>[] {
  const sizes = job.jig['test-piece'];
  if (sizes === undefined) return [];
  const piece = testPiece(job, stops, sizes);
  if (piece.kind === 'cannot') return [piece];
  const programs = testPrograms(job, placings, stops, piece.value);
  return programs.kind === 'cannot'
    ? [programs]
    : programs.value.map((program) => ({
        kind: 'made',
        value: { program, cutter: piece.value.cutter, bodies },
      }));
}

/** Combs in the waste, cut while the clamps of the part itself stand. */
function combing(
  job: Job,
  placings: Placings,
  stops: readonly StopPart[],
  bodies: readonly Body[],
  bed: InBed,
): readonly Step<PlannedProgram>[] {
  const sizes = job.jig['waste-combs'];
  if (sizes === undefined) return [];
  const piece = wasteCombs(job, sizes);
  if (piece.kind === 'cannot') return [piece];
  const { cutter } = piece.value;
  const programs = testPrograms(job, placings, stops, piece.value, 'the first part');
  if (programs.kind === 'cannot') return [programs];
  return programs.value.map((program, i) => ({
    kind: 'made',
    value: clamped({ program, cutter }, bed.clamps?.[i === 0 ? 'frontUp' : 'backUp'], bodies),
  }));
}

/** Common practice, no source. */
const LANE_PER_DIAMETER = 0.6;

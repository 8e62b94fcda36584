import type { Holding, ProgramFile } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import type { Body } from '../sweep/body.ts';
import type { Clash } from '../sweep/clash.ts';
import { keepClearOf, type Cuts } from '../sweep/keep-clear.ts';
import { pieceOf } from '../sweep/piece.ts';
import { placedMoves } from '../sweep/placed-moves.ts';
import { programAgainstJob, type ProgramFit } from '../sweep/program-against-job.ts';
import type { Program } from '../sweep/program/program.ts';
import { reachOf, type Reach } from '../sweep/reach.ts';
import { candidatesOf, holdMargin, type Candidates } from './candidates.ts';
import { gentleTorqueNm } from './clamp-force.ts';
import { boltSizes } from './bolts.ts';
import { forceOf, type PlannedForce } from './force.ts';
import { freedPieces } from './freed.ts';
import { bestLayout, type Layout } from './layout.ts';
import { locatorsOf, supportOf } from './locators.ts';
import { holdNumbers } from './numbers.ts';
import { pieceHold, screwTie, type PieceHold } from './piece-hold.ts';
import { placedScrews, type PlacedScrew } from './screws.ts';
import type { StrapPlace } from './strap-place.ts';
import { travelFaults, type TravelFault } from './travel.ts';
import { frictionOf, verdictOf, type Held, type Verdict } from './verdict.ts';
import { strengthsOf } from './wood.ts';

/** How the blank is held in one placing, and all that speaks against it. */
export interface PlacingPlan {
  readonly placing: Placing;
  readonly force: PlannedForce;
  readonly candidates: Candidates;
  readonly layout: Layout | null;
  readonly screws: readonly PlacedScrew[];
  /** Of everything that holds the blank, clamps or not; null when nothing is cut. */
  readonly verdict: Verdict | null;
  readonly standing: readonly Body[];
  readonly clashes: readonly Clash[];
  readonly crush: readonly Crush[];
  readonly pieces: readonly PieceHold[];
  readonly travel: readonly TravelFault[];
  readonly reach: Reach | null;
  readonly program: CheckedProgram | null;
}

/** A pad that dents the wood when its bolt is as tight as it may come out. */
export interface Crush {
  readonly strap: StrapPlace;
  readonly pressure: number;
  readonly bears: number;
  readonly gentleTorqueNm: number;
}

export interface CheckedProgram {
  readonly file: ProgramFile;
  readonly program: Program;
  /** Null when the program is not sound: then it is not checked. */
  readonly fit: ProgramFit | null;
}

export interface HoldPlan {
  readonly frontUp: PlacingPlan;
  readonly backUp: PlacingPlan;
}

/** Bodies on the bed, in each placing; null when what locates cannot be made there. */
export type Standing = {
  readonly frontUp: readonly Body[];
  readonly backUp: readonly Body[];
} | null;

/** What stands on the bed besides clamps and screws, and the programs that were read. */
export interface HoldInput {
  readonly job: Job;
  readonly holding: Holding;
  readonly placings: { readonly frontUp: Placing; readonly backUp: Placing };
  /** What locates, where a job wants it; the search for room asks for other places of the blank too. */
  readonly standingOf: (job: Job) => Standing;
  readonly programs: { readonly frontUp: Program | null; readonly backUp: Program | null };
}

/** The plan of both placings: the first placing's clamps are chosen first, the second's like them where it can be. */
export function holdPlan(input: HoldInput): HoldPlan {
  const [first, second] =
    input.job.first === 'front'
      ? (['frontUp', 'backUp'] as const)
      : (['backUp', 'frontUp'] as const);
  const one = placingPlan(input, first, []);
  const two = placingPlan(input, second, one.layout?.straps ?? []);
  return first === 'frontUp' ? { frontUp: one, backUp: two } : { frontUp: two, backUp: one };
}

/** Whether nothing speaks against a placing's plan. */
export const isGood = (plan: PlacingPlan): boolean =>
  plan.verdict?.isHeld !== false &&
  plan.clashes.length === 0 &&
  plan.travel.length === 0 &&
  plan.pieces.every(({ isHeld }) => isHeld) &&
  plan.screws.every(({ faults }) => faults.length === 0) &&
  (plan.program === null || agrees(plan.program));

const agrees = ({ fit }: CheckedProgram): boolean =>
  fit !== null && (fit.against.kind === 'agrees' || fit.against.kind === 'agrees-either-way');

function placingPlan(
  input: HoldInput,
  which: 'frontUp' | 'backUp',
  others: readonly StrapPlace[],
): PlacingPlan {
  const { job, holding } = input;
  const placing = input.placings[which];
  const wish = holding.clamps[which];
  const checked = checkedProgram(input, which);
  const cuts: Cuts = checked === null ? { by: 'features' } : cutsOf(checked);
  const clear = keepClearOf(job, placing, cuts);
  const screws = placedScrews(job, holding, placing);
  const standing = [...(input.standingOf(job)?.[which] ?? []), ...screws.map(({ body }) => body)];
  const features = job.features.filter(({ face }) => face === placing.faceUp);
  const force = forceOf(job, holding, features);
  const reach = reachOf(job, placing, cuts);
  const candidates: Candidates =
    holding.clamps.kind === 'none'
      ? { free: [], refused: [], outOfReachCount: 0 }
      : candidatesOf(job, holding, placing, clear, standing, wish);
  const judge = (straps: readonly StrapPlace[], least: number): Verdict =>
    verdictOf(
      heldBy(input, placing, straps, screws),
      { ...force, box: reach!.cuttingBox, topMm: job.blank.thickMm },
      holdNumbers.safety.byFriction,
      least,
    );
  const layout =
    reach === null
      ? null
      : bestLayout({
          free: candidates.free,
          wish,
          others,
          judge,
          inSteps: holding.tracks.length > 0,
        });
  const straps = layout?.straps ?? [];
  return {
    placing,
    force,
    candidates,
    layout,
    screws,
    verdict: reach === null ? null : judge(straps, -Infinity),
    standing,
    clashes: clear([...standing, ...straps.flatMap(({ bodies }) => bodies)], holdMargin),
    crush: straps.flatMap((strap) => crushOf(job, strap)),
    pieces: freedPieces(job, holding.tabs)
      .filter(({ by }) => by.face === placing.faceUp)
      .map((piece) => pieceHold(job, holding, placing, piece, straps, screws)),
    travel: reach === null ? [] : travelFaults(job, reach),
    reach,
    program: checked,
  };
}

function checkedProgram(input: HoldInput, which: 'frontUp' | 'backUp'): CheckedProgram | null {
  const { job, holding, placings } = input;
  const [file, program] = [holding.programs[which], input.programs[which]];
  if (file === null || program === null) return null;
  if (!program.isSound) return { file, program, fit: null };
  const moves = placedMoves(job, placings[which], program, cutterOf(file));
  return { file, program, fit: programAgainstJob(job, placings[which], moves) };
}

/** A program that is not sound may do anything: then what the features ask for is looked at. */
const cutsOf = ({ program, file }: CheckedProgram): Cuts =>
  program.isSound ? { by: 'program', program, cutterOf: cutterOf(file) } : { by: 'features' };

const cutterOf =
  ({ cutter, tools }: ProgramFile) =>
  (tool: number | null) =>
    (tool === null ? undefined : tools.get(tool)) ?? cutter;

function heldBy(
  { job, holding }: HoldInput,
  placing: Placing,
  straps: readonly StrapPlace[],
  screws: readonly PlacedScrew[],
): Held {
  const { thickMm } = job.blank;
  const { vacuum, tape } = holding;
  const { box, outline } = pieceOf(job, placing);
  const [widthMm, heightMm] = [box.highX - box.lowX, box.highY - box.lowY];
  const locators = locatorsOf(job, placing);
  const quarter = (areaShare: number): readonly (readonly [number, number])[] =>
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ].map(([x, y]) => [
      box.lowX + widthMm * (0.5 + 0.25 * Math.sqrt(areaShare) * x!),
      box.lowY + heightMm * (0.5 + 0.25 * Math.sqrt(areaShare) * y!),
    ]);
  const share = (areaMm2: number): number => Math.min(1, areaMm2 / (widthMm * heightMm));
  const sucked =
    vacuum === null ? 0 : (vacuum.gaugeKPa / 1000) * vacuum.areaMm2 * holdNumbers.vacuumShare;
  return {
    presses: [
      ...straps.map(({ padAt, leastN }) => ({
        at: [padAt.x, padAt.y, thickMm] as const,
        newtons: leastN,
      })),
      ...(vacuum === null
        ? []
        : quarter(share(vacuum.areaMm2)).map(([x, y]) => ({
            at: [x, y, 0] as const,
            newtons: sucked / 4,
          }))),
    ],
    ties: [
      ...screws.map((screw) => screwTie(screw, holdNumbers.safety.byFriction)),
      ...locators.dowels,
      ...(tape === null
        ? []
        : quarter(share(tape.areaMm2)).map(([x, y]) => ({
            at: [x, y, 0] as const,
            sidewaysN: ((tape.shearKPa / 1000) * tape.areaMm2) / 4,
            downN: 0,
          }))),
    ],
    stops: locators.stops,
    support: supportOf(outline),
    friction: frictionOf(holding),
  };
}

function crushOf(job: Job, strap: StrapPlace): readonly Crush[] {
  const { crush } = strengthsOf(job.blank.material);
  const pressure = strap.mostN / strap.padMm2;
  if (pressure <= crush) return [];
  const boltMm = boltSizes[strap.strap.thread].diameterMm;
  return [
    {
      strap,
      pressure,
      bears: crush,
      gentleTorqueNm: gentleTorqueNm({ ...strap, boltMm }, strap.padMm2, crush),
    },
  ];
}

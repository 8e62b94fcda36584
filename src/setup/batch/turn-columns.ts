import type { Face, Job, ZeroXy } from '../../job/job.ts';
import { BATCH } from '../../num/batch.ts';
import type { Point } from '../../plane/point.ts';
import type { Columns } from '../columns.ts';
import type { EdgeShapes } from '../edges.ts';
import type { Laid } from '../landing.ts';
import { contactColumns } from '../touching.ts';
import type { WoodMoves } from '../wood-moves.ts';
import type { ZeroFinder } from '../zero.ts';
import type { StrainColumns } from './edge-columns.ts';
import { facesColumns } from './faces-columns.ts';
import { landingColumns, type LaidColumns, type LandingColumns } from './landing-columns.ts';
import { seatColumns, type SeatColumns } from './seat-columns.ts';
import {
  addDraws,
  newFound,
  onStopsColumns,
  type FillFound,
  type FoundColumns,
} from './zero-columns.ts';

/** One blank turned over on stops as in `TurnOver`, all trials of a batch at once and to the bit the same. */
export interface TurnColumns {
  /** Seats and zeroes both placings of the first `count` trials. */
  readonly lay: (draws: Float64Array, count: number) => void;
  readonly landing: (cut: string, face: Face, at: Point<'blank'>) => LandingColumns;
  /** Writes trial `i` of those laid last where what goes by trials reads it. */
  readonly take: (draws: Float64Array, i: number) => void;
}

/** The same turn-over trial by trial. `returns` and `dial` are columns of draws, as in `turnOverOf`. */
export interface ByTrials {
  readonly first: LaidByTrial;
  readonly second: LaidByTrial;
  readonly edges: EdgeShapes;
  readonly strains: WoodMoves;
  readonly returns: AtAxes | null;
  readonly dial: AtAxes | null;
}

type LaidByTrial = Laid & { readonly zero: ZeroFinder };

interface AtAxes {
  readonly x: number;
  readonly y: number;
}

/** Null for every other way of locating than stops. */
export function turnColumns(job: Job, byTrials: ByTrials, columns: Columns): TurnColumns | null {
  if (job.locating !== 'stops') return null;
  const { stops } = job;
  const { first, second, edges, strains: moves, returns, dial } = byTrials;
  const both = [first.placing, second.placing];
  const frontUpFirst = first.placing.faceUp === 'front' ? both : both.toReversed();
  const touching = contactColumns(frontUpFirst, columns);
  const zeros = { front: job.zero.frontUp.xy, back: job.zero.backUp.xy };
  const [firstXy, secondXy] = [zeros[first.placing.faceUp], zeros[second.placing.faceUp]];
  const keepsZero = secondXy.kind === 'kept';
  const strains = { x: new Float64Array(BATCH), y: new Float64Array(BATCH) };

  const prepare = ({ placing, frame, anchor }: Laid) => {
    const faces = facesColumns(job, stops.made, frame, columns);
    const pose = seatColumns({ job, stops, placing, frame, faces }, columns, touching);
    return { placing, frame, anchor, faces, pose, found: newFound() };
  };
  const one = prepare(first);
  const two = prepare(second);

  const take = (draws: Float64Array, i: number): void => {
    moves.load(draws, i);
    takeLaid(one, first, i);
    takeLaid(two, second, i);
  };
  /** Zeros that are found on the blank, trial by trial. */
  const onBlank =
    (
      zero: ZeroFinder,
      laid: LaidByTrial,
      shape: (draws: Float64Array, i: number) => void,
    ): FillFound =>
    (draws, count, { dx, dy }) => {
      for (let i = 0; i < count; i++) {
        take(draws, i);
        shape(draws, i);
        zero.find(draws, i, edges.shape, laid.pose, laid.found);
        dx[i] = laid.found.dx;
        dy[i] = laid.found.dy;
      }
    };
  const finder = (
    xy: ZeroXy,
    laid: LaidByTrial,
    { faces }: typeof one,
    shape: (draws: Float64Array, i: number) => void,
  ): FillFound =>
    xy.kind === 'stops' || xy.kind === 'milled-stops'
      ? onStopsColumns(laid.placing, laid.frame, xy, faces, columns)
      : onBlank(laid.zero, laid, shape);
  const findFirst = finder(firstXy, first, one, edges.load);
  const findSecond = finder(secondXy, second, two, (draws, i) => {
    edges.swell(draws, i, moves.x, moves.y);
  });

  return {
    lay: (draws, count) => {
      fillStrains(moves, strains, draws, count);
      one.pose.load(draws, count, null);
      two.pose.load(draws, count, strains);
      findFirst(draws, count, one.found);
      if (keepsZero) {
        keep(one.found, two.found, count);
        if (returns !== null) addDraws(two.found, returns, draws, count);
      } else findSecond(draws, count, two.found);
      if (dial !== null) addDraws(two.found, dial, draws, count);
    },
    landing: (cut, face, at) => {
      const laid = one.placing.faceUp === face ? one : two;
      return landingColumns(
        job,
        laid,
        { cut, at, strains: laid === two ? strains : null },
        columns,
      );
    },
    take,
  };
}

function fillStrains(
  moves: WoodMoves,
  { x, y }: StrainColumns,
  draws: Float64Array,
  count: number,
): void {
  for (let i = 0; i < count; i++) {
    moves.load(draws, i);
    x[i] = moves.x;
    y[i] = moves.y;
  }
}

/** As the sums of `turnOverOf`: no zero is left negative. */
function keep(from: FoundColumns, to: FoundColumns, count: number): void {
  for (let i = 0; i < count; i++) {
    to.dx[i] = from.dx[i]! + 0;
    to.dy[i] = from.dy[i]! + 0;
  }
}

function takeLaid(
  { pose, found }: LaidColumns & { readonly pose: SeatColumns },
  into: Laid,
  i: number,
): void {
  into.pose.cos = pose.cos[i]!;
  into.pose.sin = pose.sin[i]!;
  into.pose.backA = pose.backA[i]!;
  into.pose.backB = pose.backB[i]!;
  into.found.dx = found.dx[i]!;
  into.found.dy = found.dy[i]!;
}

import { invariant } from '../num/invariant.ts';
import type { Face, Job, ZeroXy } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import { turnColumns, type TurnColumns } from './batch/turn-columns.ts';
import type { Columns } from './columns.ts';
import { edgeShapes } from './edges.ts';
import type { Faces } from './faces.ts';
import { landingOn, type Laid, type Landing } from './landing.ts';
import { featureNamed, placingsOf } from './place.ts';
import type { Placing } from './placing.ts';
import { newPose } from './pose.ts';
import { seatFrameOf } from './seat-frame.ts';
import { seatsOf } from './seats.ts';
import { woodMoves } from './wood-moves.ts';
import { holeFinder } from './zero-hole.ts';
import { zeroFinder, type ZeroFinder } from './zero.ts';

export type { Landing } from './landing.ts';

/**
 * One blank turned over: seats both placings in trial `i`, then tells where cuts land.
 * This is the model of registration.md, written once; plain arithmetic only, so that every
 * JavaScript engine gives the same bits.
 */
export interface TurnOver {
  /** Seats and zeroes both placings with the draws of trial `i`. */
  readonly lay: (draws: Float64Array, i: number) => void;
  /**
   * How far a cut commanded at a nominal blank place lands from it, in the blank frame as cut in
   * the first placing, mm; of the trial laid last. Written to `x`, `y`.
   */
  readonly landing: (cut: string, face: Face, at: Point<'blank'>) => Landing;
  /** Play left on each side of dowels or in a nest, the lesser of both placings, mm; infinite on stops. */
  readonly spareMm: () => number;
  /** The same for all trials of a batch at once, where it can be had; asks for no further columns. */
  readonly inBatches: () => TurnColumns | null;
}

interface Prepared extends Laid {
  readonly zero: ZeroFinder;
  readonly faces: Faces;
}

/** `withDial`: what is dialled into the second zero is a deviation too, 0 unless drawn. */
export function turnOverOf(job: Job, columns: Columns, withDial = false): TurnOver {
  const { frontUp, backUp } = placingsOf(job);
  const [one, two] = job.first === 'front' ? [frontUp, backUp] : [backUp, frontUp];
  const edges = edgeShapes(job, columns);
  const zeros = { front: job.zero.frontUp.xy, back: job.zero.backUp.xy };
  const strains = woodMoves(job, columns);

  const prepare = (placing: Placing, before: Prepared | null): Prepared => {
    const frame = seatFrameOf(job, placing);
    const xy = zeros[placing.faceUp];
    const faces = { fence: 0, fenceSlope: 0, side: 0, sideSlope: 0 };
    invariant(
      (xy.kind !== 'kept' && xy.kind !== 'hole') || before !== null,
      'the first placing has no zero to keep and no hole to find',
    );
    const zero = (): ZeroFinder => {
      if (xy.kind === 'kept') return before!.zero;
      if (xy.kind !== 'hole') return zeroFinder(job, placing, frame, xy, faces, columns);
      const cut = holeCut(job, before!, xy, columns);
      const hole = { ...cut, strains };
      return holeFinder(job, placing, frame, hole, columns);
    };
    const finder = zero();
    return {
      placing,
      frame,
      faces,
      zero: finder,
      anchor: finder.anchor,
      pose: newPose(),
      found: { dx: 0, dy: 0 },
    };
  };

  const first = prepare(one, null);
  const second = prepare(two, first);
  const secondXy = zeros[two.faceUp];
  const keepsZero = secondXy.kind === 'kept';
  const returns =
    secondXy.kind === 'kept' && secondXy.how !== 'held'
      ? {
          x: columns.of({ kind: 'zero-return', axis: 'x' }),
          y: columns.of({ kind: 'zero-return', axis: 'y' }),
        }
      : null;
  const dial = withDial
    ? {
        x: columns.of({ kind: 'dialled', axis: 'x' }),
        y: columns.of({ kind: 'dialled', axis: 'y' }),
      }
    : null;
  const seats = seatsOf(job, { first, second, strains, keepsZero }, columns);

  const lay = (draws: Float64Array, i: number): void => {
    edges.load(draws, i);
    strains.load(draws, i);
    seats.first(draws, i, edges.shape, first.pose);
    first.zero.find(draws, i, edges.shape, first.pose, first.found);
    seats.between(draws, i);
    edges.swell(draws, i, strains.x, strains.y);
    seats.second(draws, i, edges.shape, second.pose);
    if (keepsZero) {
      second.found.dx = first.found.dx + (returns === null ? 0 : draws[returns.x + i]!);
      second.found.dy = first.found.dy + (returns === null ? 0 : draws[returns.y + i]!);
    } else {
      second.zero.find(draws, i, edges.shape, second.pose, second.found);
    }
    if (dial !== null) {
      second.found.dx += draws[dial.x + i]!;
      second.found.dy += draws[dial.y + i]!;
    }
  };

  const landing = (cut: string, face: Face, at: Point<'blank'>): Landing => {
    const laid = first.placing.faceUp === face ? first : second;
    const moved = laid === second ? strains : null;
    return landingOn(job, laid, { cut, at, height: 'face', strains: moved }, columns);
  };
  const spareMm = (): number => Math.min(first.pose.spareMm, second.pose.spareMm);
  const inBatches = (): TurnColumns | null =>
    turnColumns(job, { first, second, edges, strains, returns, dial }, columns);
  return { lay, landing, spareMm, inBatches };
}

/** The hole lies where the first placing really cut it, in wood that has moved since. */
function holeCut(
  job: Job,
  before: Laid,
  xy: Extract<ZeroXy, { kind: 'hole' }>,
  columns: Columns,
): { readonly cut: Landing; readonly at: Point<'blank'> } {
  const feature = featureNamed(job, xy.feature);
  // A cutter that leans bores a hole that does; its centre is found at half the thickness.
  const hole = {
    cut: `feature ${feature.name}`,
    at: feature.at,
    height: 'half',
    strains: null,
  } as const;
  return { cut: landingOn(job, before, hole, columns), at: feature.at };
}

import type { Cutter, Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import { surfaceMm } from './axis.ts';
import { sweepChordMm } from './numbers.ts';
import { placesAlong } from './program/along.ts';
import type { Move, Program } from './program/program.ts';

/** A place of the cutter's tip in the layout frame, z above the bed, mm. */
export interface TipPlace {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A move of a program where it happens on the bed. */
export interface PlacedMove {
  readonly line: number;
  readonly kind: Move['kind'];
  readonly cutter: Cutter;
  /** At least one; curves in chords. */
  readonly places: readonly TipPlace[];
}

/**
 * The moves of a placing's program on the bed: its work zero is the placing's, its Z counts from the top
 * of the thinnest blank that the job allows, or from the bed. `cutterOf` tells what is in the spindle.
 */
export function placedMoves(
  job: Job,
  placing: Placing,
  program: Program,
  cutterOf: (tool: number | null) => Cutter,
): readonly PlacedMove[] {
  const { x, y } = placing.zero;
  const zero = placing.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
  const z = zero.z.on === 'top' ? surfaceMm(job, placing) : 0;
  return program.moves.map((move) => ({
    line: move.line,
    kind: move.kind,
    cutter: cutterOf(move.tool),
    places: placesAlong(move, sweepChordMm).map((at) => ({
      x: at.x + x,
      y: at.y + y,
      z: at.z + z,
    })),
  }));
}

import type { Move, Place, Program } from './program.ts';
import { wayOf } from './check.ts';

/** Kept between the lowest move of an air cut and the highest thing on the bed, mm. */
const AIR_MM = 5;

/**
 * The same moves so far up that the cutter touches nothing, spindle off: shows on the machine that the
 * way is the one that was meant.
 */
export function airCut(program: Program): Program {
  const lowestMm = wayOf(program).reduce((low, p) => Math.min(low, p.z), Infinity);
  const byMm = Math.max(0, program.highestMm + AIR_MM - lowestMm);
  const raised = (p: Place): Place => ({ ...p, z: p.z + byMm });
  return {
    ...program,
    name: `${program.name}, air cut`,
    header: [
      `Air cut: the same moves ${Number(byMm.toFixed(3))} mm higher, spindle off. Nothing is cut.`,
      ...program.header,
    ],
    safeMm: program.safeMm + byMm,
    witness: { ...program.witness, at: raised(program.witness.at) },
    spindle: 'stands still',
    moves: program.moves.map((move): Move =>
      move.kind === 'cut' || move.kind === 'arc' ? { ...move, to: raised(move.to) } : move,
    ),
  };
}

import type { HoldInput } from './hold-input.ts';
import { pieceRoom } from './piece-room.ts';
import type { HoldPlan } from './plan.ts';
import { isBlankGood, type PlacingPlan } from './placing-plan.ts';
import { roomFor } from './room.ts';

/** Pieces for which remedies are looked for; more are copies as a rule, and what helps one helps all. */
const MOST_PIECES = 3;

/** The plan with remedies for whatever is not held, each planned anew and found good. */
export function advised(input: HoldInput, plan: HoldPlan): HoldPlan {
  const one = (which: 'frontUp' | 'backUp'): PlacingPlan => {
    const own = plan[which];
    const remedies = roomFor(input, plan, which);
    let looked = 0;
    const pieces = own.pieces.map((piece) => {
      // The rest is what the blank's own clamps hold.
      const waits = piece.piece.isRest && !isBlankGood(own);
      if (piece.isHeld || waits || (looked += 1) > MOST_PIECES) return piece;
      return { ...piece, remedies: pieceRoom(input, own, which, piece) };
    });
    return { ...own, remedies, pieces };
  };
  return { frontUp: one('frontUp'), backUp: one('backUp') };
}

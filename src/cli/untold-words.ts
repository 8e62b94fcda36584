import type { Untold } from '../measure/piece-errors.ts';
import { unreachable } from '../num/invariant.ts';

/** What readings cannot tell apart, and the reading that would. */
export function untoldWords(untold: Untold): string {
  switch (untold.kind) {
    case 'no combs':
      return `nothing along ${untold.axis.toUpperCase()}: cut a comb along ${untold.axis.toUpperCase()}`;
    case 'one row':
      return untold.axis === 'x'
        ? 'shift along X and turn: a comb along X at another height would'
        : 'shift along Y and turn: a comb along Y further right or left would';
    case 'lean and fence angle':
      return 'the Y axis leaning and the fence being turned: a second comb along Y, far along the blank, would';
    case 'not on stops':
      return 'the Y axis leaning and the play of the blank: a square and a dial (flipwright square) would';
    case 'one turn':
      return 'the stop and how this one time was seated: turn it over twice more with fresh combs (three to correct, five or six to know the scatter)';
    case 'length, zero and scale':
      return "the blank's length, the zero and the scale come as one number: calipering the length takes that out, a long known length the scale";
    case 'drops out':
      return untold.turn === 'about-y'
        ? 'what drops out turned about Y (the zero along Y, the height of the blank, scale along Y): a turn about X would show it'
        : 'what drops out turned about X (the zero along X, the length of the blank, scale along X): a turn about Y would show it';
    default:
      return unreachable(untold);
  }
}

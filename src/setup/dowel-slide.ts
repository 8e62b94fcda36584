import type { TakeUp } from '../job/job.ts';
import type { Columns } from './columns.ts';
import type { PlacingKey } from './deviation.ts';
import type { Meeting } from './dowels.ts';
import type { SeatFrame } from './seat-frame.ts';
import type { Slide } from './seat.ts';
import { awayOf } from './take-up.ts';

/**
 * Slid along the fence as far as the hole on the dowel lets it. The fence, touched first, wins: a hole that is nearer to or
 * further from the fence than its dowel has less play along it, and none when it binds.
 */
export function dowelSlide(
  { pairs, meet }: Meeting,
  takeUp: TakeUp,
  frame: SeatFrame,
  key: PlacingKey,
  columns: Columns,
): Slide {
  const way = takeUp === 'anywhere' ? null : awayOf(takeUp, frame)[0];
  const along = columns.of({ kind: 'take-up', placing: key, part: 'along' });
  const { holeA, holeB, pinA, pinB, playMm } = pairs;
  let share = 0;
  let spareMm = 0;
  return {
    spareMm: () => spareMm,
    load: (draws, i) => {
      meet(draws, i);
      share = way ?? 2 * draws[along + i]!;
    },
    along: (cos, sin, c, k) => {
      const a = cos * pinA[0]! + sin * pinB[0]! - holeA[0]!;
      const b = cos * pinB[0]! - sin * pinA[0]! - holeB[0]!;
      // The hole's middle off the pin's, across the fence: `off + k` times what it is off along it.
      const off = c + k * a - b;
      const square = 1 + k * k;
      spareMm = playMm[0]! - Math.abs(off);
      const middle = (-k * off) / square;
      const free = middle * middle + (playMm[0]! * playMm[0]! - off * off) / square;
      return a + middle + share * Math.sqrt(Math.max(0, free));
    },
  };
}

/** Nothing stops it along the fence: it lies where it was laid. */
export const FREE_SLIDE: Slide = {
  load: () => undefined,
  along: () => 0,
  spareMm: () => Infinity,
};

import type { TakeUp } from '../job/job.ts';
import type { Columns } from './columns.ts';
import { discPlay } from './disc-play.ts';
import type { PlacingKey } from './deviation.ts';
import type { Meeting } from './dowels.ts';
import type { Taken } from './play.ts';
import type { Seat } from './seat.ts';
import type { SeatFrame } from './seat-frame.ts';
import { awayOf, takenUp } from './take-up.ts';

/** What is told to be lacking when nobody knows how much, mm. */
const LEAST_LACK_MM = 1e-6;

/**
 * Holes on dowels: about the best fit (middle on middle, line on line), anywhere that every hole's play allows, or pushed
 * one way through the middle of the dowels. Where they bind at every turn the blank lies at the best fit. Source: registration.md rule 7.
 */
export function dowelSeat(
  { pairs, line, meet }: Meeting,
  takeUp: TakeUp,
  frame: SeatFrame,
  key: PlacingKey,
  columns: Columns,
): Seat {
  const takes = takenUp(key, takeUp, columns);
  // Rows across the line of the dowels, along which a turn moves next to nothing; or across the push.
  const [alongA, alongB] = takeUp === 'anywhere' ? line : awayOf(takeUp, frame);
  const play = discPlay(pairs, alongA, alongB);
  const to: Taken = { s: 0, e: 0, f: 0 };
  return (draws, i, _shape, pose) => {
    meet(draws, i);
    play.load();
    const isOn = takes(play, draws, i, to);
    const spare = play.spareMm();
    // Three or four may not go on although each two would.
    pose.spareMm = isOn ? Math.max(0, spare) : Math.min(-LEAST_LACK_MM, spare);
    if (!isOn) to.s = to.e = to.f = 0;
    play.turn(to.s);
    const [cos, sin] = [play.cos(), play.sin()];
    const [midA, midB] = play.hole();
    const [pinA, pinB] = play.pin();
    const a = pinA + to.e * alongB + to.f * alongA;
    const b = pinB - to.e * alongA + to.f * alongB;
    pose.cos = cos;
    pose.sin = sin;
    pose.backA = cos * a + sin * b - midA;
    pose.backB = cos * b - sin * a - midB;
  };
}

import type { TakeUp } from '../job/job.ts';
import type { Columns } from './columns.ts';
import type { PlacingKey } from './deviation.ts';
import type { NestWalls } from './nest-walls.ts';
import type { Taken } from './play.ts';
import type { Seat } from './seat.ts';
import type { SeatFrame } from './seat-frame.ts';
import { awayOf, takenUp } from './take-up.ts';
import { wallPlay } from './wall-play.ts';

/**
 * Dropped into a nest: anywhere that its walls let it lie, or pushed one way. One that does not go in lies where its
 * gaps to the walls are as nearly alike as they can be. Source: registration.md section 1, "a nest's walls".
 */
export function nestSeat(
  walls: NestWalls,
  takeUp: TakeUp,
  frame: SeatFrame,
  key: PlacingKey,
  columns: Columns,
): Seat {
  const takes = takenUp(key, takeUp, columns);
  const [alongA, alongB] = takeUp === 'anywhere' ? [0, 1] : awayOf(takeUp, frame);
  const play = wallPlay(walls, alongA, alongB);
  const [midA, midB] = walls.middle;
  const to: Taken = { s: 0, e: 0, f: 0 };
  return (draws, i, shape, pose) => {
    walls.load(draws, i, shape);
    const isIn = takes(play, draws, i, to);
    const { rest } = play;
    play.turn(rest.s);
    const room = play.roomAt(rest.e, rest.f);
    pose.spareMm = isIn ? Math.max(0, room) : Math.min(0, room);
    if (!isIn) [to.s, to.e, to.f] = [rest.s, rest.e, rest.f];
    const a = to.e * alongB + to.f * alongA;
    const b = -to.e * alongA + to.f * alongB;
    const sin = to.s;
    const cos = Math.sqrt(1 - sin * sin);
    const less = -(sin * sin) / (1 + cos);
    pose.sin = sin;
    pose.cos = cos;
    // Turned back about its middle.
    pose.backA = cos * a + sin * b + less * midA + sin * midB;
    pose.backB = cos * b - sin * a + less * midB - sin * midA;
  };
}

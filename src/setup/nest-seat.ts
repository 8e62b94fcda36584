import type { TakeUp } from '../job/job.ts';
import type { Columns } from './columns.ts';
import type { PlacingKey } from './deviation.ts';
import type { NestWalls } from './nest-walls.ts';
import { pushed, taken, type Taken } from './play.ts';
import type { Seat } from './seat.ts';
import type { SeatFrame } from './seat-frame.ts';
import { awayOf, takeUpColumns } from './take-up.ts';
import { wallPlay } from './wall-play.ts';

/**
 * Dropped into a nest: anywhere that its walls let it lie, or pushed one way. One that does not go in lies unturned in
 * the middle. Source: registration.md section 1, "a nest's walls".
 */
export function nestSeat(
  walls: NestWalls,
  takeUp: TakeUp,
  frame: SeatFrame,
  key: PlacingKey,
  columns: Columns,
): Seat {
  const share = takeUpColumns(key, takeUp, columns);
  const [alongA, alongB] = takeUp === 'anywhere' ? [0, 1] : awayOf(takeUp, frame);
  const play = wallPlay(walls, alongA, alongB);
  const to: Taken = { s: 0, e: 0, f: 0 };
  return (draws, i, shape, pose) => {
    walls.load(draws, i, shape);
    const u = 0.5 + draws[share.turn + i]!;
    const v = 0.5 + draws[share.across + i]!;
    const w = 0.5 + draws[share.along + i]!;
    const isIn = takeUp === 'anywhere' ? taken(play, u, v, w, to) : pushed(play, w, to);
    if (!isIn) [to.s, to.e, to.f] = [0, ...play.middle()];
    const a = to.e * alongB + to.f * alongA;
    const b = -to.e * alongA + to.f * alongB;
    pose.sin = to.s;
    pose.cos = Math.sqrt(1 - to.s * to.s);
    pose.backA = pose.cos * a + pose.sin * b;
    pose.backB = pose.cos * b - pose.sin * a;
  };
}

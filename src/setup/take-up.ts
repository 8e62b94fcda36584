import type { TakeUp } from '../job/job.ts';
import type { Columns } from './columns.ts';
import type { PlacingKey } from './deviation.ts';
import { pushed, taken, type Play, type Taken } from './play.ts';
import type { SeatFrame } from './seat-frame.ts';

/** Puts where a loose blank comes to lie in trial `i` into `to`; false when it binds at every turn. */
export type TakenUp = (play: Play, draws: Float64Array, i: number, to: Taken) => boolean;

/** What decides it are draws of -0.5 to 0.5; a blank that is pushed one way is only free along what it is pushed to. */
export function takenUp(key: PlacingKey, takeUp: TakeUp, columns: Columns): TakenUp {
  const of = (part: 'turn' | 'across' | 'along'): number =>
    columns.of({ kind: 'take-up', placing: key, part });
  const along = of('along');
  if (takeUp !== 'anywhere')
    return (play, draws, i, to) => pushed(play, 0.5 + draws[along + i]!, to);
  const [turn, across] = [of('turn'), of('across')];
  return (play, draws, i, to) =>
    taken(play, 0.5 + draws[turn + i]!, 0.5 + draws[across + i]!, 0.5 + draws[along + i]!, to);
}

/** Direction in the seat frame in which a blank is pushed on the machine. */
export function awayOf(
  takeUp: Exclude<TakeUp, 'anywhere'>,
  frame: SeatFrame,
): readonly [number, number] {
  const [x, y] = WAY[takeUp];
  return frame.along === 'x'
    ? [frame.alongSign * x, frame.inwardSign * y]
    : [frame.alongSign * y, frame.inwardSign * x];
}

const WAY = { left: [-1, 0], right: [1, 0], near: [0, -1], far: [0, 1] } as const;

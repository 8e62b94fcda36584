import type { TakeUp } from '../job/job.ts';
import type { Columns } from './columns.ts';
import type { PlacingKey } from './deviation.ts';
import type { SeatFrame } from './seat-frame.ts';

/** Columns of what decides where a loose blank comes to lie, each -0.5 to 0.5. */
export interface TakeUpColumns {
  readonly turn: number;
  readonly across: number;
  readonly along: number;
}

/** A blank that is pushed one way is only free along what it is pushed to. */
export function takeUpColumns(key: PlacingKey, takeUp: TakeUp, columns: Columns): TakeUpColumns {
  const of = (part: 'turn' | 'across' | 'along'): number =>
    columns.of({ kind: 'take-up', placing: key, part });
  const along = of('along');
  if (takeUp !== 'anywhere') return { turn: along, across: along, along };
  return { turn: of('turn'), across: of('across'), along };
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

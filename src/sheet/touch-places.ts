import type { Job, Zero } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { pieceOf } from '../sweep/piece.ts';

/** Where the machine touches something to find a zero. */
export interface TouchPlace {
  readonly axis: 'X' | 'Y' | 'Z';
  readonly at: Point<'layout'>;
}

export function zeroOf(job: Job, placing: Placing): Zero {
  return placing.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
}

/** The touches of this placing whose places the job states: in the layout, whichever face is up. */
export function touchPlaces(job: Job, placing: Placing): readonly TouchPlace[] {
  const { xy, z } = zeroOf(job, placing);
  const onTop: TouchPlace[] = z.at === null ? [] : [{ axis: 'Z', at: z.at }];
  switch (xy.kind) {
    case 'stops':
    case 'edges':
      return xy.at === null ? onTop : [...onTop, ...besideStops(job, placing, xy.at)];
    case 'middle':
      return xy.at === null ? onTop : [...onTop, ...allRound(job, placing, xy.at)];
    case 'milled-stops':
    case 'dowels':
    case 'nest':
    case 'kept':
    case 'hole':
      return onTop;
    default:
      return unreachable(xy);
  }
}

function besideStops(job: Job, placing: Placing, at: Point<'layout'>): TouchPlace[] {
  const sides = [placing.base.side, placing.end.side];
  const { box } = pieceOf(job, placing);
  const x = sides.includes('right') ? box.highX : box.lowX;
  const y = sides.includes('far') ? box.highY : box.lowY;
  return [
    { axis: 'X', at: { x, y: at.y } },
    { axis: 'Y', at: { x: at.x, y } },
  ];
}

function allRound(job: Job, placing: Placing, { x, y }: Point<'layout'>): TouchPlace[] {
  const { lowX, lowY, highX, highY } = pieceOf(job, placing).box;
  return [
    { axis: 'X', at: { x: lowX, y } },
    { axis: 'X', at: { x: highX, y } },
    { axis: 'Y', at: { x, y: lowY } },
    { axis: 'Y', at: { x, y: highY } },
  ];
}

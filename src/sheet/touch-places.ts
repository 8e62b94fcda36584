import type { StopsJob, Zero } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';

/** Where the machine touches something to find a zero. */
export interface TouchPlace {
  readonly axis: 'X' | 'Y' | 'Z';
  readonly at: Point<'layout'>;
}

export function zeroOf(job: StopsJob, placing: Placing): Zero {
  return placing.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
}

/** The touches of this placing whose places the job states: in the rectangle of the machine, whichever face is up. */
export function touchPlaces(job: StopsJob, placing: Placing): readonly TouchPlace[] {
  const { xy, z } = zeroOf(job, placing);
  const onTop: TouchPlace[] = z.at === null ? [] : [{ axis: 'Z', at: z.at }];
  switch (xy.kind) {
    case 'stops':
    case 'edges':
      return xy.at === null ? onTop : [...onTop, ...besideStops(job, placing, xy.at)];
    case 'middle':
      return xy.at === null ? onTop : [...onTop, ...allRound(job, xy.at)];
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

function besideStops(job: StopsJob, placing: Placing, at: Point<'layout'>): TouchPlace[] {
  const sides = [placing.base.side, placing.end.side];
  const x = sides.includes('right') ? job.blank.widthMm : 0;
  const y = sides.includes('far') ? job.blank.heightMm : 0;
  return [
    { axis: 'X', at: { x, y: at.y } },
    { axis: 'Y', at: { x: at.x, y } },
  ];
}

function allRound(job: StopsJob, { x, y }: Point<'layout'>): TouchPlace[] {
  const { widthMm, heightMm } = job.blank;
  return [
    { axis: 'X', at: { x: 0, y } },
    { axis: 'X', at: { x: widthMm, y } },
    { axis: 'Y', at: { x, y: 0 } },
    { axis: 'Y', at: { x, y: heightMm } },
  ];
}

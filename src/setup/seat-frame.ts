import type { Axis } from './deviation.ts';
import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import { cornerAt } from './place.ts';
import type { Placing } from './placing.ts';

/**
 * The frame in which one placing is seated: `a` along the fence away from the side stop in use,
 * `b` away from the fence, both into the blank, origin at the corner where the two meet nominally.
 * It is the layout frame with its axes swapped or reversed, never turned by another angle.
 */
export interface SeatFrame {
  /** Layout axis along which `a` runs, and which way (1 with it, -1 against it). */
  readonly along: Axis;
  readonly alongSign: 1 | -1;
  readonly inwardSign: 1 | -1;
  readonly origin: Point<'layout'>;
  /** The nominal blank is `lengthMm` long along `a` and `depthMm` along `b`. */
  readonly lengthMm: number;
  readonly depthMm: number;
  /** 1 when (a, b) is right-handed, -1 when a counter-clockwise turn of the machine is clockwise here. */
  readonly hand: 1 | -1;
  /** How blank coordinates run along `a` and `b`: 1 the same way, -1 the other. */
  readonly blankAlongSign: 1 | -1;
  readonly blankInwardSign: 1 | -1;
  /** True when this placing uses the second side stop, so that `a` runs against the stops' own frame. */
  readonly onSecondStop: boolean;
}

export function seatFrameOf(job: Job, placing: Placing): SeatFrame {
  const fence = placing.fence.side;
  const along: Axis = fence === 'near' || fence === 'far' ? 'x' : 'y';
  const alongSign = sign(placing.sideStop.side === 'left' || placing.sideStop.side === 'near');
  const inwardSign = sign(fence === 'near' || fence === 'left');
  const corner = placing.faceUp === 'front' ? job.stops.corner.frontUp : job.stops.corner.backUp;
  const lengthMm = along === 'x' ? job.blank.widthMm : job.blank.heightMm;
  const depthMm = along === 'x' ? job.blank.heightMm : job.blank.widthMm;
  const flippedAlong = placing.mirror === along;
  const flippedInward = placing.mirror !== 'none' && placing.mirror !== along;
  return {
    along,
    alongSign,
    inwardSign,
    origin: cornerAt(job, corner),
    lengthMm,
    depthMm,
    hand: sign((alongSign === inwardSign) === (along === 'x')),
    blankAlongSign: sign((alongSign === 1) !== flippedAlong),
    blankInwardSign: sign((inwardSign === 1) !== flippedInward),
    onSecondStop: placing.sideStop.which === 'second',
  };
}

function sign(positive: boolean): 1 | -1 {
  return positive ? 1 : -1;
}

import type { Axis } from './deviation.ts';
import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import { cornerAt, frontUpCorner } from './place.ts';
import type { Placing } from './placing.ts';

/**
 * The frame in which one placing is seated: `a` along its base (the fence) away from its end (the side stop
 * in use), `b` away from the base, both into the blank, origin at the corner where the two meet nominally.
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
  /** Where the corner stands, along `a`, from which the stops are measured and about which they turn. */
  readonly cornerA: number;
  /** True when this placing uses the second side stop, so that `a` runs against the stops' own frame. */
  readonly onSecondStop: boolean;
}

export function seatFrameOf(job: Job, placing: Placing): SeatFrame {
  const base = placing.base.side;
  const along: Axis = base === 'near' || base === 'far' ? 'x' : 'y';
  const alongSign = sign(placing.end.side === 'left' || placing.end.side === 'near');
  const inwardSign = sign(base === 'near' || base === 'left');
  const sides: readonly string[] = [base, placing.end.side];
  const lengthMm = along === 'x' ? job.blank.widthMm : job.blank.heightMm;
  const depthMm = along === 'x' ? job.blank.heightMm : job.blank.widthMm;
  const flippedAlong = placing.mirror === along;
  const flippedInward = placing.mirror !== 'none' && placing.mirror !== along;
  const origin = {
    x: placing.lies.x + (sides.includes('right') ? job.blank.widthMm : 0),
    y: placing.lies.y + (sides.includes('far') ? job.blank.heightMm : 0),
  };
  return {
    along,
    alongSign,
    inwardSign,
    origin,
    cornerA: alongSign * (cornerAt(job, frontUpCorner(job))[along] - origin[along]),
    lengthMm,
    depthMm,
    hand: sign((alongSign === inwardSign) === (along === 'x')),
    blankAlongSign: sign((alongSign === 1) !== flippedAlong),
    blankInwardSign: sign((inwardSign === 1) !== flippedInward),
    onSecondStop: placing.sideStop === 'second',
  };
}

/** Seat-frame coordinates of a layout place. */
export function inFrame(
  frame: SeatFrame,
  at: Point<'layout'>,
): { readonly a: number; readonly b: number } {
  const along = frame.alongSign * (at[frame.along] - frame.origin[frame.along]);
  const across: Axis = frame.along === 'x' ? 'y' : 'x';
  return { a: along, b: frame.inwardSign * (at[across] - frame.origin[across]) };
}

function sign(positive: boolean): 1 | -1 {
  return positive ? 1 : -1;
}

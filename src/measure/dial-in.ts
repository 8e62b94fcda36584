import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import { placingsOf } from '../setup/place.ts';
import type { Estimate } from './estimate.ts';
import { factor95 } from './estimate.ts';
import type { AxisField } from './test-piece.ts';
import { fieldAt, placingAt } from './test-piece.ts';

/** What to add to the second placing's zero along one machine axis, mm, positive right or away. */
export interface Offset {
  readonly axis: 'x' | 'y';
  readonly estimate: Estimate;
  /** Half of the interval in which the next part lies 95 times in 100 once it is dialled in, by these turns alone; infinite after one turn. */
  readonly nextHalf95: number;
}

/**
 * Sign with which an offset of the second placing's zero moves the back against the front, along a blank
 * axis: the second cut moves with its zero, mirrored as the blank lies; front cut second counts the
 * other way.
 */
export function signOf(job: Job, axis: 'x' | 'y'): 1 | -1 {
  const { frontUp, backUp } = placingsOf(job);
  const second = frontUp.order === 'second' ? frontUp : backUp;
  const mirrored = second.mirror === axis ? -1 : 1;
  return second.faceUp === 'back' ? mirrored : mirrored === 1 ? -1 : 1;
}

/** The offset that brings the back onto the front at a place. */
export function offsetAt(job: Job, field: AxisField, at: Point<'blank'>): Offset {
  const off = fieldAt(field, at);
  const sign = signOf(job, field.axis);
  const placing = placingAt(field, at);
  return {
    axis: field.axis,
    estimate: { ...off, value: -sign * off.value + 0 },
    nextHalf95:
      placing === null ? Infinity : factor95(placing.dof) * Math.hypot(off.sd, placing.sd),
  };
}

/** Where the needs of a job judge the plan, blank frame: the middle of those places, else of the blank. */
export function judgedPlace(job: Job): Point<'blank'> {
  const places = job.needs.flatMap((need): Point<'blank'>[] => {
    if (need.kind === 'misalignment') return [need.at];
    if (need.kind !== 'concentric' && need.kind !== 'lip' && need.kind !== 'meets') return [];
    return job.features.filter(({ name }) => need.features.includes(name)).map(({ at }) => at);
  });
  const { widthMm, heightMm } = job.blank;
  if (places.length === 0) return { x: widthMm / 2, y: heightMm / 2 };
  return {
    x: places.reduce((sum, { x }) => sum + x, 0) / places.length,
    y: places.reduce((sum, { y }) => sum + y, 0) / places.length,
  };
}

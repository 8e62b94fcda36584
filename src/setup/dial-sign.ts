import type { Job } from '../job/job.ts';
import type { Axis } from './deviation.ts';
import { placingsOf } from './place.ts';

/**
 * Sign with which an offset of the second placing's zero moves the back against the front, along a blank
 * axis: the second cut moves with its zero, mirrored as the blank lies; front cut second counts the
 * other way.
 */
export function dialSign(job: Job, axis: Axis): 1 | -1 {
  const { frontUp, backUp } = placingsOf(job);
  const second = frontUp.order === 'second' ? frontUp : backUp;
  const mirrored = second.mirror === axis ? -1 : 1;
  return second.faceUp === 'back' ? mirrored : mirrored === 1 ? -1 : 1;
}

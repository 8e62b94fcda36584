import type { Job } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';

/** `the side stop`, or which of two. */
export function sideStopName(job: Job, placing: Placing): string {
  return hasTwoSideStops(job) ? `the ${placing.sideStop ?? 'first'} side stop` : 'the side stop';
}

export function hasTwoSideStops(job: Job): boolean {
  return job.locating === 'stops' && job.stops.corner.frontUp !== job.stops.corner.backUp;
}

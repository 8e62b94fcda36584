import type { JigPartName } from '../../job/jig-sizes.ts';
import type { Job } from '../../job/job.ts';
import { cannot, type Cannot } from '../answer.ts';
import type { StopPart } from '../stop-part.ts';

/** The first thing that a job asks for and that means nothing in its way of locating, or null. */
export function outOfPlace(job: Job, stops: readonly StopPart[]): Cannot | null {
  const wants = (part: JigPartName): boolean => job.jig[part] !== undefined;
  if (wants('fence-stop') && job.locating !== 'fence-and-dowel')
    return cannot(
      'fence-stop: only a job on a fence and a dowel has a fence by itself',
      job.locating === 'stops'
        ? 'no fence-stop: the corner stop carries the fence'
        : 'no fence-stop',
    );
  for (const part of ['steel-buttons', 'stops-from-sheet'] as const)
    if (wants(part) && stops.length === 0)
      return cannot(
        `${part}: this job has no stops`,
        job.locating === 'fence-and-dowel' ? `fence-stop: yes as well` : `no ${part}`,
      );
  return null;
}

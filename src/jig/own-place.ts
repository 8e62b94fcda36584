import type { Job } from '../job/job.ts';
import { placingsOf } from '../setup/place.ts';
import { placeElsewhere } from './standing.ts';
import { screwFit } from './screw-holes.ts';
import { stopHeights } from './stop-heights.ts';

/**
 * The job with its stops where they can be screwed down, when nobody said where they go: the reader of
 * the job file knows rows of inserts, not how long the arms of a stop are. A stated place stays.
 */
export function placedForStops(job: Job): Job {
  if (job.locating !== 'stops' || job.onBed.origin.kind !== 'assumed') return job;
  const heights = stopHeights(job, 'rim');
  if (heights.kind === 'cannot') return job;
  const thread = job.shop.bed.inserts?.thread ?? 'M6';
  const { topMm } = heights.value;
  const fit = screwFit(thread, job.stops.made.kind, topMm);
  const there = placeElsewhere(job, placingsOf(job), topMm, fit);
  if (there === null) return job;
  const because = 'the nearest place where the stops can be screwed down';
  return { ...job, onBed: { value: there, origin: { kind: 'assumed', because } } };
}

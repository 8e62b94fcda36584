import type { StopsJob } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Step } from './answer.ts';
import { layoutOnBed } from '../setup/place.ts';
import type { ScrewedPiece, Seat } from './layout-of-screws.ts';

/**
 * The place on the bed where the stops stand with the fewest inserts to be added, the nearest of
 * such; null when they stand nowhere. Searched on whole 5 mm over one pitch each way: after that the
 * pattern comes again.
 */
export function betterPlace(
  job: StopsJob,
  standThere: (job: StopsJob) => Step<readonly ScrewedPiece[]>,
): Point<'bed'> | null {
  let best: { readonly onBed: Point<'bed'>; readonly addedCount: number } | null = null;
  for (const onBed of placesByNearness(job)) {
    const there = { ...job, onBed: { ...job.onBed, value: onBed } };
    const stood = liesOnBoard(there) ? standThere(there) : null;
    if (stood?.kind !== 'made') continue;
    const addedCount = stood.value.flatMap((one) => one.seats.filter(isAdded)).length;
    if (addedCount === 0) return onBed;
    if (best === null || addedCount < best.addedCount) best = { onBed, addedCount };
  }
  return best?.onBed ?? null;
}

const isAdded = (seat: Seat): boolean => seat.insert === null;

const searchStepMm = 5;

function placesByNearness(job: StopsJob): readonly Point<'bed'>[] {
  const now = job.onBed.value;
  const { inserts, spoilboard } = job.shop.bed;
  const around = (middle: number, reachMm: number): readonly number[] => {
    const first = Math.ceil((middle - reachMm) / searchStepMm);
    const last = Math.floor((middle + reachMm) / searchStepMm);
    return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * searchStepMm);
  };
  const farMm = (at: Point<'bed'>): number => Math.hypot(at.x - now.x, at.y - now.y);
  return around(now.x, inserts?.pitchMm.x ?? spoilboard.xMm)
    .flatMap((x) => around(now.y, inserts?.pitchMm.y ?? spoilboard.yMm).map((y) => ({ x, y })))
    .toSorted((a, b) => farMm(a) - farMm(b));
}

function liesOnBoard(job: StopsJob): boolean {
  const { xMm, yMm } = job.shop.bed.spoilboard;
  const low = layoutOnBed(job, { x: 0, y: 0 });
  const high = layoutOnBed(job, { x: job.blank.widthMm, y: job.blank.heightMm });
  return low.x >= 0 && low.y >= 0 && high.x <= xMm && high.y <= yMm;
}

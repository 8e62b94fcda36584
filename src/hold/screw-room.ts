import type { Holding, ScrewKind } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { isWithin } from '../plane/stretch-inside.ts';
import type { Placing } from '../setup/placing.ts';
import { keepClearOf } from '../sweep/keep-clear.ts';
import { holdMargin } from './candidates.ts';
import { holdNumbers } from './numbers.ts';
import { placedScrews } from './screws.ts';

/** Places are tried on a grid of so many by so many. */
const GRID = 14;

/**
 * Places for screws in a stretch of the blank, as far apart as can be, so many: each keeps its distances
 * from edges, cuts and old holes, and nothing that moves comes near its head in either placing. Empty
 * when there are fewer.
 */
export function screwRoom(
  job: Job,
  holding: Holding,
  placings: readonly Placing[],
  outlines: readonly Outline<'blank'>[],
  count: number,
): readonly Point<'blank'>[] {
  const box = boundsOf(outlines.flat());
  const along = (low: number, high: number): readonly number[] =>
    Array.from({ length: GRID }, (_, k) => low + ((k + 0.5) * (high - low)) / GRID);
  const grid = along(box.lowX, box.highX)
    .flatMap((x) => along(box.lowY, box.highY).map((y) => ({ x: tidy(x), y: tidy(y) })))
    .filter((p) => isWithin(p, outlines));
  const clears = placings.map((placing) => ({
    placing,
    clear: keepClearOf(job, placing, { by: 'features' }),
  }));
  const isFree = (places: readonly Point<'blank'>[]): boolean =>
    clears.every(({ placing }) =>
      placedScrews(job, { ...holding, screws: [...holding.screws, ...places] }, placing).every(
        ({ faults }) => faults.length === 0,
      ),
    );
  const isPassedHigh = (place: Point<'blank'>): boolean =>
    clears.every(({ placing, clear }) => {
      const bodies = placedScrews(job, { ...holding, screws: [place] }, placing);
      return (
        clear(
          bodies.map(({ body }) => body),
          holdMargin,
        ).length === 0
      );
    });
  const free = grid.filter((p) => isFree([p]));
  const chosen: Point<'blank'>[] = [];
  for (let k = 0; k < count; k++) {
    const next = furthestFirst(free, chosen, box).find(
      (p) => isFree([...chosen, p]) && isPassedHigh(p),
    );
    if (next === undefined) return [];
    chosen.push(next);
  }
  return chosen;
}

/** Furthest from those that are chosen, or from the middle, first. */
function furthestFirst(
  free: readonly Point<'blank'>[],
  chosen: readonly Point<'blank'>[],
  box: ReturnType<typeof boundsOf>,
): readonly Point<'blank'>[] {
  const from =
    chosen.length > 0 ? chosen : [{ x: (box.lowX + box.highX) / 2, y: (box.lowY + box.highY) / 2 }];
  const away = (p: Point<'blank'>): number =>
    Math.min(...from.map((one) => Math.hypot(one.x - p.x, one.y - p.y)));
  return free.toSorted((a, b) => away(b) - away(a) || a.x - b.x || a.y - b.y);
}

/** Half millimetres are what a pencil marks. */
const tidy = (mm: number): number => Math.round(mm * 2) / 2;

/** The shop's own screw, or one of 4 mm that goes into the spoilboard as far as it may: a proposal. */
export function screwToUse(
  job: Job,
  holding: Holding,
): { readonly screw: ScrewKind; readonly isNew: boolean } {
  if (holding.screw !== null) return { screw: holding.screw, isNew: false };
  const into = Math.min(16, job.shop.bed.spoilboard.thickMm - holdNumbers.aboveBedMm);
  const lengthMm = Math.floor(job.blank.thickMm + into);
  return {
    screw: { name: `4 x ${lengthMm}`, shankMm: 4, lengthMm, headMm: 8, headHighMm: 3 },
    isNew: true,
  };
}

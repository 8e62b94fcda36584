import type { Job } from '../job/job.ts';
import type { Reach } from '../sweep/reach.ts';
import { layoutOnBed } from '../setup/place.ts';

/** The machine cannot go where the cuts ask for. */
export interface TravelFault {
  readonly axis: 'X' | 'Y' | 'Z';
  /** From where to where the axis would have to go: on the bed, or above it, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly travelMm: number;
  /** `size`: longer than the travel, wherever it begins. `place`: only if the travel begins at the bed's corner. */
  readonly kind: 'size' | 'place';
}

/** Sums of lengths below a metre are off by less than this, mm. */
const ROUNDING_MM = 1e-9;

/** Faults of travel; X and Y are taken to begin at the near-left corner of the bed, as nothing says otherwise. */
export function travelFaults(job: Job, reach: Reach): readonly TravelFault[] {
  const { travelMm } = job.shop.machine;
  const low = layoutOnBed(job, { x: reach.box.lowX, y: reach.box.lowY });
  const high = layoutOnBed(job, { x: reach.box.highX, y: reach.box.highY });
  const axes = [
    ['X', low.x, high.x, travelMm.x],
    ['Y', low.y, high.y, travelMm.y],
  ] as const;
  const flat = axes.flatMap(([axis, fromMm, toMm, travel]): TravelFault[] => {
    const fault = { axis, fromMm, toMm, travelMm: travel };
    if (toMm - fromMm > travel + ROUNDING_MM) return [{ ...fault, kind: 'size' }];
    if (fromMm < -ROUNDING_MM || toMm > travel + ROUNDING_MM) return [{ ...fault, kind: 'place' }];
    return [];
  });
  const up = reach.highMm - reach.lowMm;
  if (up <= travelMm.z + ROUNDING_MM) return flat;
  return [
    ...flat,
    { axis: 'Z', fromMm: reach.lowMm, toMm: reach.highMm, travelMm: travelMm.z, kind: 'size' },
  ];
}

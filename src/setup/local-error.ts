import type { Job } from '../job/job.ts';
import type { Columns } from './columns.ts';
import type { Axis } from './deviation.ts';
import { cornerAt, frontUpCorner } from './place.ts';

/** How far an axis is off at one place of its travel more than at another, in a trial, mm. */
export type LocalError = (draws: Float64Array, i: number) => number;

const NOTHING: LocalError = () => 0;

/**
 * The smooth error of an axis along its travel: the same whenever the machine comes to the same place. It is drawn at places
 * `overMm` apart, counted from the near-left corner of the bed, and between two of them it is what both make of it by
 * their nearness, in such shares that it is as large there as anywhere. A zero that was touched at `from` has that place's error in it.
 */
export function localError(
  job: Job,
  axis: Axis,
  at: number,
  from: number,
  columns: Columns,
): LocalError {
  const parts = localPartsOf(job, axis, at, from, columns);
  if (parts === null) return NOTHING;
  const { low, high, atLow, atHigh, fromLow, fromHigh, atFromLow, atFromHigh } = parts;
  return (draws, i) =>
    low * draws[atLow + i]! +
    high * draws[atHigh + i]! -
    (fromLow * draws[atFromLow + i]! + fromHigh * draws[atFromHigh + i]!);
}

/** The four draws it is made of, those of the place and those of `from`: their columns, and their shares. */
export interface LocalParts {
  readonly low: number;
  readonly high: number;
  readonly atLow: number;
  readonly atHigh: number;
  readonly fromLow: number;
  readonly fromHigh: number;
  readonly atFromLow: number;
  readonly atFromHigh: number;
}

/** Null where there is none. */
export function localPartsOf(
  job: Job,
  axis: Axis,
  at: number,
  from: number,
  columns: Columns,
): LocalParts | null {
  const { spread, overMm } = job.shop.machine.local;
  const { distribution } = spread;
  if (at === from || (distribution.kind === 'exactly' && distribution.value === 0)) return null;
  const corner = job.onBed.value[axis] - cornerAt(job, frontUpCorner(job))[axis];
  const one = partsAt((corner + at) / overMm, axis, columns);
  const other = partsAt((corner + from) / overMm, axis, columns);
  return {
    ...one,
    fromLow: other.low,
    fromHigh: other.high,
    atFromLow: other.atLow,
    atFromHigh: other.atHigh,
  };
}

function partsAt(
  place: number,
  axis: Axis,
  columns: Columns,
): Pick<LocalParts, 'low' | 'high' | 'atLow' | 'atHigh'> {
  const knot = Math.floor(place);
  const nearer = place - knot;
  const length = Math.sqrt(nearer * nearer + (1 - nearer) * (1 - nearer));
  return {
    low: (1 - nearer) / length,
    high: nearer / length,
    atLow: columns.of({ kind: 'local-error', axis, knot }),
    atHigh: columns.of({ kind: 'local-error', axis, knot: knot + 1 }),
  };
}

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
  const { spread, overMm } = job.shop.machine.local;
  const { distribution } = spread;
  if (at === from || (distribution.kind === 'exactly' && distribution.value === 0)) return NOTHING;
  const corner = job.onBed.value[axis] - cornerAt(job, frontUpCorner(job))[axis];
  const one = valueAt((corner + at) / overMm, axis, columns);
  const other = valueAt((corner + from) / overMm, axis, columns);
  return (draws, i) => one(draws, i) - other(draws, i);
}

function valueAt(place: number, axis: Axis, columns: Columns): LocalError {
  const knot = Math.floor(place);
  const nearer = place - knot;
  const length = Math.sqrt(nearer * nearer + (1 - nearer) * (1 - nearer));
  const [low, high] = [(1 - nearer) / length, nearer / length];
  const atLow = columns.of({ kind: 'local-error', axis, knot });
  const atHigh = columns.of({ kind: 'local-error', axis, knot: knot + 1 });
  return (draws, i) => low * draws[atLow + i]! + high * draws[atHigh + i]!;
}

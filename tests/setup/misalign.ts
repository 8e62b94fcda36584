import { BATCH } from '../../src/num/batch.ts';
import type { Job } from '../../src/job/job.ts';
import { newColumns } from '../../src/setup/columns.ts';
import { deviationKey } from '../../src/setup/deviation.ts';
import { turnOverOf } from '../../src/setup/turnover.ts';

/** What is off, by the keys of `deviationKey`; all else is true. Throws on a key the job does not use. */
export type Off = Readonly<Record<string, number>>;

/** Back minus front at a blank point, mm, by the production model with one trial. */
export function misalign(job: Job, off: Off, at: { x: number; y: number }): [number, number] {
  const columns = newColumns();
  const model = turnOverOf(job, columns);
  const front = model.landing('front', 'front', at);
  const back = model.landing('back', 'back', at);
  const keys = columns.asked().map(deviationKey);
  const draws = new Float64Array(keys.length * BATCH);
  for (const [key, value] of Object.entries(off)) {
    const index = keys.indexOf(key);
    if (index < 0) throw new Error(`the job does not use ${key}; it uses ${keys.join(', ')}`);
    draws[index * BATCH] = value;
  }
  model.lay(draws, 0);
  front.locate(draws, 0);
  back.locate(draws, 0);
  return [back.x() - front.x(), back.y() - front.y()];
}

/** Keys that the job's model asks for. */
export function keysOf(job: Job): readonly string[] {
  const columns = newColumns();
  const model = turnOverOf(job, columns);
  model.landing('front', 'front', { x: 1, y: 1 });
  model.landing('back', 'back', { x: 1, y: 1 });
  return columns.asked().map(deviationKey);
}

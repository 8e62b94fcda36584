import { BATCH } from '../../src/num/batch.ts';
import type { StopsJob, Need } from '../../src/job/job.ts';
import { deviationKey } from '../../src/setup/deviation.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import type { Off } from './misalign.ts';

/** What one need of a job comes to with these things off, by the production model in one trial. */
export function comeTo(job: StopsJob, need: Need, off: Off): readonly number[] {
  const model = misfitModel({ ...job, needs: [need] });
  const keys = model.deviations.map(deviationKey);
  const draws = new Float64Array(keys.length * BATCH);
  for (const [key, value] of Object.entries(off)) {
    const index = keys.indexOf(key);
    if (index < 0) throw new Error(`the need does not use ${key}; it uses ${keys.join(', ')}`);
    draws[index * BATCH] = value;
  }
  const out = new Float64Array(model.outputCount * BATCH);
  model.evaluate(draws, 1, out);
  return Array.from({ length: model.outputCount }, (_, k) => out[k * BATCH]!);
}

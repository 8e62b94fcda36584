import type { Job } from '../job/job.ts';
import { misfitModel } from '../setup/misfit.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import { predict, type PredictOptions } from '../stackup/predict.ts';
import type { Prediction } from '../stackup/prediction.ts';

/** Job to prediction in one go on this thread, for few trials. */
export function predictJob(job: Job, options: PredictOptions): Prediction {
  const misfit = misfitModel(job);
  return predict(job.name, misfit, sourcesOf(job, misfit.deviations), options);
}

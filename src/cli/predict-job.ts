import type { Job } from '../job/job.ts';
import { predictedModel } from '../sources/predicted.ts';
import { predict, type PredictOptions } from '../stackup/predict.ts';
import type { Prediction } from '../stackup/prediction.ts';

/** Job to prediction in one go on this thread, for few trials. */
export function predictJob(job: Job, options: PredictOptions): Prediction {
  const { misfit, sources } = predictedModel(job);
  return predict(job.name, misfit, sources, options);
}

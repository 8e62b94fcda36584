import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import type { PredictOptions } from './options.ts';
import { startPredicting } from './predicting.ts';
import type { Prediction } from './prediction.ts';

export type { PredictOptions } from './options.ts';

/**
 * Predicts every need of a set-up, on this thread and in one go: misfits by Monte Carlo until the asked
 * digits are certain or the trials are used up, with first order and worst case beside it.
 */
export function predict(
  jobName: string,
  misfit: MisfitModel,
  sources: readonly Source[],
  options: PredictOptions,
): Prediction {
  const under = startPredicting(jobName, misfit, sources, options);
  for (let block = 0; ; block++) {
    under.take(under.work(block));
    const ended = under.ended();
    if (ended !== null) return under.finish(ended);
  }
}

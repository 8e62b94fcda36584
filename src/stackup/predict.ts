import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { batchOfParts } from './batch-of-parts.ts';
import { straightOf } from './first-order.ts';
import { modelOf } from './model-of.ts';
import { sharesOf } from './need-shares.ts';
import type { PredictOptions } from './options.ts';
import { plain } from './plain.ts';
import type { NeedPrediction, Prediction } from './prediction.ts';
import { radial } from './radial.ts';
import { runTrials } from './trials.ts';

export type { PredictOptions } from './options.ts';

/** Predicts every need of a set-up: misfits by Monte Carlo, with first order and worst case beside it. */
export function predict(
  jobName: string,
  misfit: MisfitModel,
  sources: readonly Source[],
  options: PredictOptions,
): Prediction {
  const model = modelOf(misfit, sources);
  const predicted = {
    model,
    line: straightOf(model),
    results: runTrials(model, options.seed, options.trials),
  };
  const moments = momentsKnown(sources);
  const shares = sharesOf(model, misfit, sources, options);
  return {
    json: 1,
    job: jobName,
    seed: options.seed,
    trials: options.trials,
    assumed: sources.filter(({ origin }) => origin.kind === 'assumed').map(({ id }) => id),
    sources: sources.map(({ id, words, text, recurs, origin }) => ({
      name: id,
      words,
      text,
      recurs,
      because: origin.kind === 'assumed' ? origin.because : null,
    })),
    needs: misfit.judged.map((judged, k): NeedPrediction => {
      const shared = shares(k);
      const causes = { moments, ...(moments === 'known' ? shared : { ...shared, shares: [] }) };
      return judged.shape === 'radial'
        ? { ...radial(predicted, judged), ...causes }
        : { ...plain(predicted, judged), ...causes };
    }),
    batch: batchOfParts(misfit, sources, predicted, options),
  };
}

/** What the fewest readings among the sources leave to be told. */
function momentsKnown(sources: readonly Source[]): NeedPrediction['moments'] {
  const dofs = sources.flatMap(({ distribution }) =>
    distribution.kind === 'scaled-t' ? [distribution.dof] : [],
  );
  const fewest = Math.min(Infinity, ...dofs);
  return fewest > 2 ? 'known' : fewest > 1 ? 'no sd' : 'no mean';
}

import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { leftOutOf, type AfterTrials } from './after-trials.ts';
import { undrawnBatch } from './batch-of-parts.ts';
import { straightOf } from './first-order.ts';
import { NO_CAUSES } from './need-shares.ts';
import { plain } from './plain.ts';
import type { Lined, Predicted } from './predicted.ts';
import type { NeedPrediction, Prediction } from './prediction.ts';
import { radial } from './radial.ts';
import { evaluateAt } from './trials.ts';

/** The trials with the straight line beside them. */
export function linedUp(predicted: Predicted): Lined {
  const { model } = predicted;
  const nothing = new Float64Array(model.inputs.length);
  return {
    ...predicted,
    line: straightOf(model),
    atNothing: evaluateAt(model, [nothing])[0]!,
  };
}

/** All that can be said of a set-up once its trials have ended, as far as it was worked out after them. */
export function predictionOf(
  jobName: string,
  misfit: MisfitModel,
  sources: readonly Source[],
  lined: Lined,
  after: AfterTrials,
): Prediction {
  const { task, totals, moments, ended, digitsAsked } = lined;
  return {
    json: 1,
    job: jobName,
    seed: task.seed,
    trials: totals.trials(),
    ended,
    digitsAsked,
    leftOut: leftOutOf(after, lined, misfit),
    assumed: sources.filter(({ origin }) => origin.kind === 'assumed').map(({ id }) => id),
    sources: sources.map(({ id, words, text, recurs, origin }) => ({
      name: id,
      words,
      text,
      recurs,
      because: origin.kind === 'assumed' ? origin.because : null,
    })),
    needs: misfit.judged.map((judged, k): NeedPrediction => {
      const shared = after.shares?.(k) ?? NO_CAUSES;
      const causes = {
        moments,
        measured: after.measured?.get(k) ?? null,
        ...(moments === 'known' ? shared : { ...shared, shares: [] }),
      };
      return judged.shape === 'radial'
        ? { ...radial(lined, judged, k, sources, after.worst), ...causes }
        : { ...plain(lined, judged, k, sources, after.worst), ...causes };
    }),
    batch: after.batch ?? undrawnBatch(misfit, totals),
  };
}

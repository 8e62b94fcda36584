import type { Judged } from '../setup/judged.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { batchOfParts } from './batch-of-parts.ts';
import { measuredWith } from './measured.ts';
import { straightOf } from './first-order.ts';
import { sharesOf } from './need-shares.ts';
import { plain } from './plain.ts';
import type { Lined, Predicted } from './predicted.ts';
import type { Measured, NeedPrediction, Prediction } from './prediction.ts';
import { radial } from './radial.ts';
import { evaluateAt } from './trials.ts';

/** A turn is not read with a gauge of lengths. */
const isTurn = (judged: Judged): boolean => judged.shape === 'plain' && judged.unit !== 'mm';

/** All that can be said of a set-up once its trials have ended. */
export function predictionOf(
  jobName: string,
  misfit: MisfitModel,
  sources: readonly Source[],
  predicted: Predicted,
): Prediction {
  const { model, task, totals, moments, ended, digitsAsked } = predicted;
  const nothing = new Float64Array(model.inputs.length);
  const lined: Lined = {
    ...predicted,
    line: straightOf(model),
    atNothing: evaluateAt(model, [nothing])[0]!,
  };
  const trials = totals.trials();
  const { gaugeSd, kept } = predicted;
  const measured = (judged: Judged): Measured | null =>
    gaugeSd === null || gaugeSd === 0 || isTurn(judged)
      ? null
      : measuredWith(gaugeSd, judged, kept, task.seed);
  const shares = sharesOf(predicted, sources);
  return {
    json: 1,
    job: jobName,
    seed: task.seed,
    trials,
    ended,
    digitsAsked,
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
      const causes = {
        moments,
        measured: measured(judged),
        ...(moments === 'known' ? shared : { ...shared, shares: [] }),
      };
      return judged.shape === 'radial'
        ? { ...radial(lined, judged, k, sources), ...causes }
        : { ...plain(lined, judged, k, sources), ...causes };
    }),
    batch: batchOfParts(misfit, sources, lined),
  };
}

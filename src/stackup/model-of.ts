import { BATCH } from '../num/batch.ts';
import { invariant } from '../num/invariant.ts';
import { idOf } from '../num/stream.ts';
import { deviationKey } from '../setup/deviation.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { inputsOf } from './inputs.ts';
import type { Model } from './model.ts';

/** The misfit model with a distribution and a stream for each of its deviations. */
export function modelOf(misfit: MisfitModel, sources: readonly Source[]): Model {
  const used = inputsOf(sources);
  const ids = used.map(({ deviation }) => idOf(deviationKey(misfit.deviations[deviation]!)));
  invariant(new Set(ids).size === ids.length, 'two deviations share a stream');
  // With a source for each, the model reads the draws where they stand.
  const isWhole =
    used.length === misfit.deviations.length &&
    used.every(({ deviation }, index) => deviation === index);
  // Deviations without a source stay 0: the model sees them, the engine does not draw them.
  const full = new Float64Array(isWhole ? 0 : misfit.deviations.length * BATCH);
  return {
    inputs: used.map(({ source }, index) => ({
      id: ids[index]!,
      distribution: source.distribution,
    })),
    outputCount: misfit.outputCount,
    evaluate: (draws, count, out) => {
      if (isWhole) {
        misfit.evaluate(draws, count, out);
        return;
      }
      used.forEach(({ deviation }, index) => {
        full.set(draws.subarray(index * BATCH, index * BATCH + count), deviation * BATCH);
      });
      misfit.evaluate(full, count, out);
    },
  };
}

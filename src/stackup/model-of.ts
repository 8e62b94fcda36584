import { BATCH } from '../num/batch.ts';
import { invariant } from '../num/invariant.ts';
import { idOf } from '../num/stream.ts';
import { deviationKey } from '../setup/deviation.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import type { Model } from './model.ts';

/** The misfit model with a distribution and a stream for each of its deviations. */
export function modelOf(misfit: MisfitModel, sources: readonly Source[]): Model {
  const sourceAt = new Map(sources.flatMap((source) => source.deviations.map((k) => [k, source])));
  const used = [...sourceAt.keys()].sort((a, b) => a - b);
  const ids = used.map((k) => idOf(deviationKey(misfit.deviations[k]!)));
  invariant(new Set(ids).size === ids.length, 'two deviations share a stream');
  // Deviations without a source stay 0: the model sees them, the engine does not draw them.
  const full = new Float64Array(misfit.deviations.length * BATCH);
  return {
    inputs: used.map((k, index) => ({
      id: ids[index]!,
      distribution: sourceAt.get(k)!.distribution,
    })),
    outputCount: misfit.outputCount,
    evaluate: (draws, count, out) => {
      used.forEach((k, index) => {
        full.set(draws.subarray(index * BATCH, index * BATCH + count), k * BATCH);
      });
      misfit.evaluate(full, count, out);
    },
  };
}

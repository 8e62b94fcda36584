import { BATCH } from '../num/batch.ts';
import { fillDraws } from '../num/draw.ts';
import { fillWords, idOf } from '../num/stream.ts';
import { deviationKey } from '../setup/deviation.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { allMet } from './all-met.ts';
import { inputsOf } from './inputs.ts';
import type { Model } from './model.ts';
import type { Steps } from './steps.ts';
import type { Task } from './tally.ts';
import { drawBatch } from './trials.ts';

export interface BatchCounts {
  readonly batches: number;
  readonly firstGood: number;
  readonly allGood: number;
  /** Batches whose further parts are all good when each result is corrected by what the first part showed. */
  readonly restGoodCorrected: number;
}

const ANEW: ReadonlySet<Source['recurs']> = new Set(['part', 'placing', 'feature']);

/**
 * Draws at most `wanted` batches of parts, the first parts being those of the prediction itself.
 * Corrected: every result of a further part less what the first part's result was off from nothing-off, as
 * somebody does who measures the first part without error and dials out what it shows. What recurs goes
 * away, and the first part's own scatter comes in; each result is dialled by itself, though in truth
 * two needs may hang on one dial. Whether a blank goes on its dowels or into its nest is not dialled.
 */
export function* countBatches(
  { deviations, partCount, judged }: MisfitModel,
  sources: readonly Source[],
  model: Model,
  { asked, seed, batchTrials }: Task,
  atNothing: readonly number[],
  wanted: number,
): Steps<BatchCounts> {
  const anew = inputsOf(sources).flatMap(({ deviation, source }, index) =>
    ANEW.has(source.recurs)
      ? [{ index, key: deviationKey(deviations[deviation]!), distribution: source.distribution }]
      : [],
  );
  const met = allMet(asked);
  // No offset makes a blank go on that binds.
  const bound = judged.flatMap((one) =>
    one.shape === 'plain' && one.need.kind === 'goes-on' ? [one.at] : [],
  );
  const dialled = Array.from({ length: model.outputCount }, (_, k) => k).filter(
    (k) => !bound.includes(k),
  );
  const draws = new Float64Array(model.inputs.length * BATCH);
  const [out, first] = [draws, draws].map(() => new Float64Array(model.outputCount * BATCH));
  const words = new Int32Array(BATCH);
  const [isMet, isRestGood, isRestGoodCorrected, isFirstGood] = [0, 0, 0, 0].map(
    () => new Uint8Array(BATCH),
  );
  const counts = { batches: 0, firstGood: 0, allGood: 0, restGoodCorrected: 0 };
  for (let batch = 0; counts.batches < wanted; batch++) {
    const count = Math.min(batchTrials, wanted - counts.batches);
    drawBatch(model, seed, batch, 1, draws);
    model.evaluate(draws, count, first!);
    met(first!, count, isFirstGood!);
    isRestGood!.fill(1);
    isRestGoodCorrected!.fill(1);
    for (let part = 2; part <= partCount; part++) {
      yield {
        phase: 'batches',
        done: (counts.batches + (count * (part - 2)) / partCount) / wanted,
      };
      for (const { index, key, distribution } of anew) {
        fillWords(seed, idOf(`part ${part}/${key}`), batch, 1, words, count);
        fillDraws(distribution, words, draws, index * BATCH, count);
      }
      model.evaluate(draws, count, out!);
      met(out!, count, isMet!);
      for (let i = 0; i < count; i++) isRestGood![i]! &= isMet![i]!;
      for (const k of dialled) {
        for (let i = k * BATCH; i < k * BATCH + count; i++) out![i]! -= first![i]! - atNothing[k]!;
      }
      met(out!, count, isMet!);
      for (let i = 0; i < count; i++) isRestGoodCorrected![i]! &= isMet![i]!;
    }
    counts.batches += count;
    for (let i = 0; i < count; i++) {
      counts.firstGood += isFirstGood![i]!;
      counts.allGood += isFirstGood![i]! & isRestGood![i]!;
      counts.restGoodCorrected += isRestGoodCorrected![i]!;
    }
  }
  return counts;
}

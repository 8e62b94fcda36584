import { BATCH } from '../num/batch.ts';
import { fillDraws } from '../num/draw.ts';
import { invariant } from '../num/invariant.ts';
import { fillWords, idOf } from '../num/stream.ts';
import { deviationKey } from '../setup/deviation.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { allMet } from './all-met.ts';
import { chanceOf } from './chance.ts';
import type { PredictOptions } from './options.ts';
import type { Predicted } from './predicted.ts';
import type { BatchPrediction } from './prediction.ts';
import { drawBatch } from './trials.ts';

/** Most batches that are drawn, most parts in one, and most parts in all of them together. */
const MOST_TRIALS = 20_000;
export const MOST_PARTS = 1000;
const MOST_IN_ALL = 100_000;

/**
 * What a batch comes to: shop, power-up and set-up are drawn once for all its parts; blank, placings and
 * cuts anew for each. The first part is the one that the rest of the prediction tells of; each further
 * one has streams of its own, named by its number.
 */
export function batchOfParts(
  misfit: MisfitModel,
  sources: readonly Source[],
  predicted: Predicted,
  { seed, trials }: PredictOptions,
): BatchPrediction {
  const { partCount, judged } = misfit;
  invariant(
    partCount >= 1 && partCount <= MOST_PARTS,
    `a batch has 1 to ${MOST_PARTS} parts, not ${partCount}`,
  );
  const { results } = predicted;
  let good = 0;
  for (let i = 0; i < trials; i++) if (allMet(judged, (column) => results[column]![i]!)) good++;
  const one = chanceOf(good, trials);
  const of = { partCount, onePart: one.chance, expectedBad: partCount * (1 - one.chance) };
  if (partCount === 1 || misfit.needs.length === 0)
    return { ...of, trials, allGood: one.chance, allGoodSe: one.chanceSe };
  const count = Math.min(trials, MOST_TRIALS, Math.ceil(MOST_IN_ALL / partCount));
  const all = chanceOf(countAllGood(misfit, sources, predicted, seed, count), count);
  return { ...of, trials: count, allGood: all.chance, allGoodSe: all.chanceSe };
}

const ANEW: ReadonlySet<Source['recurs']> = new Set(['part', 'placing', 'feature']);

function countAllGood(
  { deviations, judged, partCount }: MisfitModel,
  sources: readonly Source[],
  { model, results }: Predicted,
  seed: number,
  trials: number,
): number {
  const used = sources
    .flatMap((source) => source.deviations.map((k) => ({ k, source })))
    .sort((a, b) => a.k - b.k);
  const anew = used.flatMap(({ k, source }, index) =>
    ANEW.has(source.recurs)
      ? [{ index, key: deviationKey(deviations[k]!), distribution: source.distribution }]
      : [],
  );
  const draws = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  const words = new Int32Array(BATCH);
  const isGood = new Uint8Array(BATCH);
  let good = 0;
  for (let batch = 0; batch * BATCH < trials; batch++) {
    const count = Math.min(BATCH, trials - batch * BATCH);
    for (let i = 0; i < count; i++)
      isGood[i] = allMet(judged, (column) => results[column]![batch * BATCH + i]!) ? 1 : 0;
    drawBatch(model, seed, batch, 1, draws);
    for (let part = 2; part <= partCount; part++) {
      for (const { index, key, distribution } of anew) {
        fillWords(seed, idOf(`part ${part}/${key}`), batch, 1, words, count);
        fillDraws(distribution, words, draws, index * BATCH, count);
      }
      model.evaluate(draws, count, out);
      for (let i = 0; i < count; i++)
        if (isGood[i] === 1 && !allMet(judged, (column) => out[column * BATCH + i]!)) isGood[i] = 0;
    }
    for (let i = 0; i < count; i++) good += isGood[i]!;
  }
  return good;
}

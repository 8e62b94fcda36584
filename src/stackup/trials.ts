import { BATCH } from '../num/batch.ts';
import { fillDraws } from '../num/draw.ts';
import { fillWords } from '../num/stream.ts';
import type { Model } from './model.ts';

/** Two independent samples of the inputs; the second serves the shares. */
export type Lane = 1 | 2;

/** Fills one batch of draws for every input. */
export function drawBatch(
  model: Model,
  seed: number,
  batch: number,
  lane: Lane,
  draws: Float64Array,
): void {
  const words = new Int32Array(BATCH);
  model.inputs.forEach((input, k) => {
    fillWords(seed, input.id, batch, lane, words, BATCH);
    fillDraws(input.distribution, words, draws, k * BATCH, BATCH);
  });
}

/** The first `trials` trials of a model: one column of results an output. */
export function runTrials(model: Model, seed: number, trials: number): readonly Float64Array[] {
  const draws = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  const results = Array.from({ length: model.outputCount }, () => new Float64Array(trials));
  for (let batch = 0; batch * BATCH < trials; batch++) {
    const count = Math.min(BATCH, trials - batch * BATCH);
    drawBatch(model, seed, batch, 1, draws);
    model.evaluate(draws, count, out);
    results.forEach((result, k) => {
      result.set(out.subarray(k * BATCH, k * BATCH + count), batch * BATCH);
    });
  }
  return results;
}

/** Outputs of a model at a few given places of its inputs: `results[place][output]`. */
export function evaluateAt(
  model: Model,
  places: readonly Float64Array[],
): readonly (readonly number[])[] {
  const draws = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  const results: number[][] = [];
  for (let from = 0; from < places.length; from += BATCH) {
    const some = places.slice(from, from + BATCH);
    some.forEach((place, i) => {
      for (let k = 0; k < model.inputs.length; k++) draws[k * BATCH + i] = place[k]!;
    });
    model.evaluate(draws, some.length, out);
    some.forEach((_, i) => {
      results.push(Array.from({ length: model.outputCount }, (__, k) => out[k * BATCH + i]!));
    });
  }
  return results;
}

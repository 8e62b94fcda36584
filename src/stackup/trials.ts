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
  const { inputs } = model;
  for (let k = 0; k < inputs.length; k++) {
    const { id, distribution } = inputs[k]!;
    if (distribution.kind === 'exactly') {
      draws.fill(distribution.value, k * BATCH, (k + 1) * BATCH);
      continue;
    }
    fillWords(seed, id, batch, lane, words, BATCH);
    fillDraws(distribution, words, draws, k * BATCH, BATCH);
  }
}

/** Filled anew for every input. */
const words = new Int32Array(BATCH);

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

/** Columns to work a few places in, kept from one time to the next: a search asks for thousands. */
const columnsKept = new WeakMap<
  Model,
  { readonly draws: Float64Array; readonly out: Float64Array }
>();

function columnsOf(model: Model): { readonly draws: Float64Array; readonly out: Float64Array } {
  const known = columnsKept.get(model);
  if (known !== undefined) return known;
  const made = {
    draws: new Float64Array(model.inputs.length * BATCH),
    out: new Float64Array(model.outputCount * BATCH),
  };
  columnsKept.set(model, made);
  return made;
}

/** Outputs of a model at a few given places of its inputs: `results[place][output]`. */
export function evaluateAt(
  model: Model,
  places: readonly Float64Array[],
): readonly (readonly number[])[] {
  const { draws, out } = columnsOf(model);
  const inputCount = model.inputs.length;
  const results: number[][] = [];
  for (let from = 0; from < places.length; from += BATCH) {
    const count = Math.min(BATCH, places.length - from);
    for (let i = 0; i < count; i++) {
      const place = places[from + i]!;
      for (let k = 0; k < inputCount; k++) draws[k * BATCH + i] = place[k]!;
    }
    model.evaluate(draws, count, out);
    for (let i = 0; i < count; i++) {
      const result: number[] = [];
      for (let k = 0; k < model.outputCount; k++) result.push(out[k * BATCH + i]!);
      results.push(result);
    }
  }
  return results;
}

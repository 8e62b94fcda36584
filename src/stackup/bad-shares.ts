import { BATCH } from '../num/batch.ts';
import { fillFigure, fillGood, type Asked } from './figure.ts';
import type { Model } from './model.ts';
import { atOnce, type Steps } from './steps.ts';
import type { Task } from './tally.ts';
import { drawBatch } from './trials.ts';

/** A share of a chance and its standard error. */
export interface BadShare {
  readonly share: number;
  readonly se: number;
}

/** Fewer bad trials than this say nothing of their causes. */
const LEAST_BAD = 20;

/**
 * Of the trials that miss a question, the share that would be good if a group of inputs were drawn afresh:
 * to within the chance of being bad, the group's total share of the variance of good or bad. Null where
 * hardly any trial is bad. Only the bad ones among the kept trials are worked again, so rare ones count too.
 * Source: the total effect of table 2 (f) of Saltelli et al. (see shares.ts), of a figure that is 0 or 1.
 *
 * @returns `shares[question][group]`
 */
export function badShares(
  ...asked: Parameters<typeof badSharesByStep>
): readonly (readonly BadShare[] | null)[] {
  return atOnce(badSharesByStep(...asked));
}

/** The same in steps of one evaluation of a batch. */
export function* badSharesByStep(
  model: Model,
  { asked, seed, batchTrials }: Pick<Task, 'asked' | 'seed' | 'batchTrials'>,
  kept: readonly Float64Array[],
  groups: readonly (readonly number[])[],
): Steps<readonly (readonly BadShare[] | null)[]> {
  const bad = badTrials(asked, kept);
  const trials = [...new Set(bad.flat())].sort((a, b) => a - b).slice(0, BATCH);
  const place = new Map(trials.map((trial, i) => [trial, i]));
  const [draws, fresh] = [1, 2].map((lane) =>
    gathered(model, seed, batchTrials, trials, lane as 1 | 2),
  );
  const good: Uint8Array[][] = [];
  for (const group of groups) {
    yield { phase: 'shares', done: 1 };
    const mixed = draws!.slice();
    for (const k of group) mixed.set(fresh!.subarray(k * BATCH, (k + 1) * BATCH), k * BATCH);
    good.push(goodOf(model, asked, mixed, trials.length));
  }
  const count = kept[0]?.length ?? 0;
  return bad.map((those, q) => {
    const used = those.filter((trial) => place.has(trial));
    if (used.length < LEAST_BAD) return null;
    return groups.map((_, g) => {
      const mended = used.filter((trial) => good[g]![q]![place.get(trial)!] === 1).length;
      const share = mended / used.length;
      const perGood = 1 / Math.max(1e-9, 1 - those.length / count);
      return {
        share: share * perGood,
        se: Math.sqrt((share * (1 - share)) / used.length) * perGood,
      };
    });
  });
}

/** Numbers of the first bad trials of each question, as many as fit together. */
function badTrials(asked: Asked, kept: readonly Float64Array[]): readonly (readonly number[])[] {
  const most = Math.floor(BATCH / Math.max(1, asked.questions.length));
  const found = asked.questions.map((): number[] => []);
  const out = new Float64Array(kept.length * BATCH);
  const count = kept[0]?.length ?? 0;
  for (let from = 0; from < count; from += BATCH) {
    const some = Math.min(BATCH, count - from);
    kept.forEach((column, k) => {
      out.set(column.subarray(from, from + some), k * BATCH);
    });
    goodIn(asked, out, some).forEach((good, q) => {
      for (let i = 0; i < some && found[q]!.length < most; i++)
        if (good[i] === 0) found[q]!.push(from + i);
    });
  }
  return found;
}

/** The draws of single trials, side by side. */
function gathered(
  model: Model,
  seed: number,
  batchTrials: number,
  trials: readonly number[],
  lane: 1 | 2,
): Float64Array {
  const all = new Float64Array(model.inputs.length * BATCH);
  const draws = new Float64Array(model.inputs.length * BATCH);
  let drawn = -1;
  trials.forEach((trial, i) => {
    const batch = Math.floor(trial / batchTrials);
    if (batch !== drawn) drawBatch(model, seed, batch, lane, draws);
    drawn = batch;
    for (let k = 0; k < model.inputs.length; k++)
      all[k * BATCH + i] = draws[k * BATCH + (trial % batchTrials)]!;
  });
  return all;
}

function goodOf(model: Model, asked: Asked, draws: Float64Array, count: number): Uint8Array[] {
  const out = new Float64Array(model.outputCount * BATCH);
  model.evaluate(draws, count, out);
  return goodIn(asked, out, count);
}

/** Of each question, 1 for every good trial. */
function goodIn({ figures, questions }: Asked, out: Float64Array, count: number): Uint8Array[] {
  const values = figures.map((figure) => {
    const column = new Float64Array(BATCH);
    fillFigure(figure, out, column, count);
    return column;
  });
  return questions.map((question) => {
    const good = new Uint8Array(BATCH);
    fillGood(question, values, good, count);
    return good;
  });
}

import { BATCH } from '../../src/num/batch.ts';
import type { Distribution } from '../../src/num/distribution.ts';
import type { Asked } from '../../src/stackup/figure.ts';
import type { Model } from '../../src/stackup/model.ts';
import { planOf } from '../../src/stackup/plan.ts';
import { blockWorker, taskOf } from '../../src/stackup/tally.ts';
import { totalsOf, type Totals } from '../../src/stackup/totals.ts';

export const normal = (mean: number, sd: number): Distribution => ({ kind: 'normal', mean, sd });
export const rectangular = (low: number, high: number): Distribution => ({
  kind: 'rectangular',
  low,
  high,
});
export const scaledT = (mean: number, scale: number, dof: number): Distribution => ({
  kind: 'scaled-t',
  mean,
  scale,
  dof,
});

/** A model of so many results, each trial worked out by a function of its inputs. */
export function modelOfFunction(
  distributions: readonly Distribution[],
  results: (x: readonly number[]) => readonly number[],
  outputCount = 1,
): Model {
  return {
    inputs: distributions.map((distribution, k) => ({ id: k + 1, distribution })),
    outputCount,
    evaluate: (draws, count, out) => {
      const x = distributions.map(() => 0);
      for (let i = 0; i < count; i++) {
        for (let k = 0; k < x.length; k++) x[k] = draws[k * BATCH + i]!;
        results(x).forEach((result, k) => {
          out[k * BATCH + i] = result;
        });
      }
    },
  };
}

/** The one result as it stands, judged against nothing. */
export const FIRST: Asked = {
  figures: [{ kind: 'column', at: 0 }],
  questions: [{ lowest: 0, highest: 0, low: null, high: null }],
};

/** All blocks of `trials` trials, through the engine. */
export function tried(model: Model, trials: number, asked: Asked = FIRST, seed = 1): Totals {
  const task = taskOf(model, asked, planOf(seed, trials));
  const work = blockWorker(model, task);
  const totals = totalsOf(task);
  for (let block = 0; block < task.mostBlocks; block++) totals.take(work(block));
  return totals;
}

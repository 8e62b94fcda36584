import { BATCH } from '../num/batch.ts';
import { BINS, binRangeOf, countInto, quantileOfBins, type BinRange } from '../num/histogram.ts';
import { joinMoments, momentsOfSome, noMoments, type Moments } from '../num/moments.ts';
import { fillFigure, fillGood, type Asked } from './figure.ts';
import type { Model } from './model.ts';
import { blockTrialsOf, type Plan } from './plan.ts';
import { joinPlane, planeOfSome, type PlaneMoments } from './plane-moments.ts';
import { atOnce, type Steps } from './steps.ts';
import { drawBatch } from './trials.ts';

/** What one block of trials comes to: plain numbers and arrays, so that it can come from another thread. */
export interface BlockTally {
  readonly block: number;
  readonly figures: readonly FigureTally[];
  /** Of each vector, in the order of the figures that are lengths. */
  readonly planes: readonly PlaneMoments[];
  /** Counts of all figures, `BINS` each. */
  readonly bins: Uint16Array;
  /** Good trials of each question, and last those that are good in all. */
  readonly good: readonly number[];
}

export interface FigureTally extends Moments {
  readonly least: number;
  readonly greatest: number;
  /** The block's own ends of the symmetric 95 % interval. */
  readonly low: number;
  readonly high: number;
}

/** What must be the same on every thread for the blocks to be the same: plain data. */
export interface Task extends Plan {
  readonly asked: Asked;
  readonly ranges: readonly BinRange[];
}

/** A task whose bins fit the model's figures, by a look at its first trials. */
export function taskOf(model: Model, asked: Asked, plan: Plan): Task {
  const draws = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  drawBatch(model, plan.seed, 0, 1, draws);
  model.evaluate(draws, plan.batchTrials, out);
  const values = new Float64Array(plan.batchTrials);
  const ranges = asked.figures.map((figure) => {
    fillFigure(figure, out, values, plan.batchTrials);
    return binRangeOf(values);
  });
  return { ...plan, asked, ranges };
}

/** Called with the results of each batch of a block: `from` is the first one's number among all trials. */
export type Watch = (out: Float64Array, from: number, count: number) => void;

/** A function that works any block of a task, in any order. */
export function blockWorker(
  model: Model,
  task: Task,
): (block: number, watch?: Watch) => BlockTally {
  const steps = blockStepper(model, task);
  return (block, watch) => atOnce(steps(block, watch));
}

/** The same in steps of one batch. */
export function blockStepper(
  model: Model,
  task: Task,
): (block: number, watch?: Watch) => Steps<BlockTally> {
  const { asked, ranges, seed, batchTrials: count, blockBatches } = task;
  const { figures, questions } = asked;
  const draws = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  const values = figures.map(() => new Float64Array(BATCH));
  const isGood = new Uint8Array(BATCH);
  const isAllGood = new Uint8Array(BATCH);
  const lengths = figures.flatMap((figure) => (figure.kind === 'length' ? [figure.x] : []));

  return function* (block, watch) {
    const moments = figures.map(noMoments);
    const least = figures.map(() => Infinity);
    const greatest = figures.map(() => -Infinity);
    const bins = new Uint16Array(figures.length * BINS);
    const good = [...questions.map(() => 0), 0];
    const planes = lengths.map(() => planeOfSome(out, 0, 0));
    for (let batch = block * blockBatches; batch < (block + 1) * blockBatches; batch++) {
      yield { phase: 'trials', done: batch / blockBatches - block };
      drawBatch(model, seed, batch, 1, draws);
      model.evaluate(draws, count, out);
      watch?.(out, batch * count, count);
      figures.forEach((figure, f) => {
        const column = values[f]!;
        fillFigure(figure, out, column, count);
        joinMoments(moments[f]!, momentsOfSome(column, count));
        countInto(bins, f * BINS, ranges[f]!, column, count);
        for (let i = 0; i < count; i++) {
          if (column[i]! < least[f]!) least[f] = column[i]!;
          if (column[i]! > greatest[f]!) greatest[f] = column[i]!;
        }
      });
      lengths.forEach((x, k) => {
        joinPlane(planes[k]!, planeOfSome(out, x, count));
      });
      isAllGood.fill(1);
      questions.forEach((question, q) => {
        fillGood(question, values, isGood, count);
        for (let i = 0; i < count; i++) {
          good[q]! += isGood[i]!;
          isAllGood[i]! &= isGood[i]!;
        }
      });
      for (let i = 0; i < count; i++) good[questions.length]! += isAllGood[i]!;
    }
    const told = moments.map((one, f): FigureTally => {
      const counted = {
        bins,
        at: f * BINS,
        count: blockTrialsOf(task),
        least: least[f]!,
        greatest: greatest[f]!,
      };
      return {
        ...one,
        least: least[f]!,
        greatest: greatest[f]!,
        low: quantileOfBins(counted, ranges[f]!, 0.025),
        high: quantileOfBins(counted, ranges[f]!, 0.975),
      };
    });
    return { block, figures: told, planes, bins, good };
  };
}

import { BATCH } from '../num/batch.ts';
import type { Job } from '../job/job.ts';
import { misfitModel } from '../setup/misfit.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import { askedOf, fillFigure, fillGood, type Question } from '../stackup/figure.ts';
import { modelOf } from '../stackup/model-of.ts';
import { planOf } from '../stackup/plan.ts';
import { drawBatch } from '../stackup/trials.ts';
import { dialOf } from './dial.ts';
import { estimateOf, type Estimate } from './estimate.ts';
import { scalerOf } from './scaled.ts';

/** Which luck a job is tried with: the same for all that are compared, so that only what differs makes a difference. */
export interface Luck {
  readonly seed: number;
  /** Blanks that are tried; `predict` with as many and `--digits 4` tries the same ones. */
  readonly trials: number;
}

/** How a job comes out on given draws. Each entry of `each` is 1 for a trial that came out good. */
export interface Outcome {
  /** Chance, 0..1, that a part meets every need. */
  readonly all: Estimate;
  readonly eachAll: Uint8Array;
  readonly needs: readonly NeedOutcome[];
}

export interface NeedOutcome {
  readonly name: string;
  readonly chance: Estimate;
  readonly each: Uint8Array;
}

/** What is done to the draws of a job, which no key of its file says. */
export interface Twist {
  /** So many turned test pieces of the same set-up are measured and their mean offset dialled in; 0 for none. */
  readonly dialledTurns: number;
  /** One source at this share of its spread; null for all as they are. */
  readonly scaled: { readonly source: string; readonly factor: number } | null;
}

export const AS_IT_IS: Twist = { dialledTurns: 0, scaled: null };

/**
 * Tries a job; null when a blank of it did not seat (contacts too close for what may be off).
 *
 * Every source has its draws by its own key, so jobs that share a source share its luck. With `figuresOf`, this is the
 * only place where advice asks for a prediction.
 */
export function tried(job: Job, luck: Luck, twist: Twist = AS_IT_IS): Outcome | null {
  const run = runOf(job, luck, twist);
  const { questions } = run;
  const good = questions.map(() => new Uint8Array(run.count));
  const eachAll = new Uint8Array(run.count).fill(1);
  const isGood = new Uint8Array(BATCH);
  const isSeated = run.each((values, from, count) => {
    if (values.some((column) => column.subarray(0, count).some(Number.isNaN))) return false;
    questions.forEach((question, q) => {
      fillGood(question, values, isGood, count);
      for (let i = 0; i < count; i++) {
        good[q]![from + i] = isGood[i]!;
        eachAll[from + i]! &= isGood[i]!;
      }
    });
    return true;
  });
  if (!isSeated) return null;
  return {
    all: estimateOf(eachAll),
    eachAll,
    needs: job.needs.map(({ name }, q) => ({
      name,
      chance: estimateOf(good[q]!),
      each: good[q]!,
    })),
  };
}

/** What a need was judged by, trial by trial, in its own unit: the figure held against each of its limits. */
export interface Judgements {
  readonly name: string;
  readonly question: Question;
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

/** The figures of every need of a job that seats. */
export function figuresOf(job: Job, luck: Luck): readonly Judgements[] {
  const run = runOf(job, luck, AS_IT_IS);
  const told = run.figures.map(() => new Float64Array(run.count));
  run.each((values, from, count) => {
    told.forEach((column, f) => {
      column.set(values[f]!.subarray(0, count), from);
    });
    return true;
  });
  return run.questions.map((question, q) => ({
    name: job.needs[q]!.name,
    question,
    lowest: told[question.lowest]!,
    highest: told[question.highest]!,
  }));
}

/** Hands over the figures of one batch; ends, with false, when it is answered false. */
type Take = (values: readonly Float64Array[], from: number, count: number) => boolean;

/** The trials that a prediction of as many would work, in its order. */
function runOf(job: Job, { seed, trials }: Luck, twist: Twist) {
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  const model = modelOf(misfit, sources);
  const { figures, questions } = askedOf(misfit.judged);
  const { batchTrials, blockBatches, mostBlocks } = planOf(seed, trials);
  const batches = blockBatches * mostBlocks;
  const scale = scalerOf(sources, twist);
  const dial = dialOf(model, misfit, sources, seed, twist);
  return {
    questions,
    figures,
    count: batchTrials * batches,
    each: (take: Take): boolean => {
      const draws = new Float64Array(model.inputs.length * BATCH);
      const out = new Float64Array(model.outputCount * BATCH);
      const values = figures.map(() => new Float64Array(BATCH));
      for (let batch = 0; batch < batches; batch++) {
        drawBatch(model, seed, batch, 1, draws);
        scale(draws);
        model.evaluate(draws, batchTrials, out);
        dial(draws, batch, batchTrials, out);
        figures.forEach((figure, f) => {
          fillFigure(figure, out, values[f]!, batchTrials);
        });
        if (!take(values, batch * batchTrials, batchTrials)) return false;
      }
      return true;
    },
  };
}

import { BATCH } from '../num/batch.ts';
import { sdOf } from '../num/spread-of.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { momentsKnown, reachedBy, type Reached } from './certain.ts';
import { askedOf } from './figure.ts';
import { modelOf } from './model-of.ts';
import type { PredictOptions } from './options.ts';
import { blockTrialsOf, planOf } from './plan.ts';
import type { Lined } from './predicted.ts';
import type { Prediction } from './prediction.ts';
import { nothingYet, workedOut } from './after-trials.ts';
import { linedUp, predictionOf } from './prediction-of.ts';
import { atOnce, type Steps } from './steps.ts';
import { blockStepper, taskOf, type BlockTally, type Task, type Watch } from './tally.ts';
import { totalsOf } from './totals.ts';

/** Why the trials ended: all asked digits are certain, or there were enough trials, or somebody stopped them. */
export type Ended = 'digits' | 'trials' | 'seconds' | 'interrupted';

/** A prediction under way, block by block, so that whoever runs it can show how far it is, or stop it. */
export interface Predicting {
  /** With the job, all that another thread needs to work blocks; plain data. */
  readonly task: Task;
  /** Works a block here. The first few must be worked here: they are kept for pictures. */
  readonly work: (block: number) => BlockTally;
  /** The same in steps of one batch. */
  readonly workBySteps: (block: number) => Steps<BlockTally>;
  /** Takes the next block in order, wherever it was worked. */
  readonly take: (tally: BlockTally) => void;
  readonly keptBlocks: number;
  readonly ended: () => Ended | null;
  readonly progress: () => Progress;
  /** What is to be worked out after the trials, in small steps; when all are done, so is the prediction. */
  readonly finishing: (ended: Ended) => Steps<Prediction>;
  /** What is known by now, at once: of what comes after the trials, what has been worked out whole. */
  readonly known: () => Prediction;
  /** All steps of finishing in one go. */
  readonly finish: (ended: Ended) => Prediction;
}

export interface Progress {
  readonly blocks: number;
  readonly trials: number;
  /** How many the digits asked are likely to want, and no more than there may be. */
  readonly likelyTrials: number;
  /** Fewest certain digits of all numbers so far. */
  readonly digits: number;
  readonly digitsAsked: number;
}

/** So many of the first trials are kept whole, for pictures, ellipses and shares of the chance. */
const KEPT_TRIALS = 20 * BATCH;
const DIGITS = 2;

export function startPredicting(
  jobName: string,
  misfit: MisfitModel,
  sources: readonly Source[],
  options: PredictOptions,
): Predicting {
  const { seed, trials, digits = DIGITS } = options;
  const model = modelOf(misfit, sources);
  const asked = askedOf(misfit.judged);
  const task = taskOf(model, asked, planOf(seed, trials));
  const totals = totalsOf(task);
  const workBlock = blockStepper(model, task);
  const size = blockTrialsOf(task);
  const keptBlocks = Math.max(1, Math.min(task.mostBlocks, Math.floor(KEPT_TRIALS / size)));
  const kept = Array.from({ length: model.outputCount }, () => new Float64Array(keptBlocks * size));
  const keep: Watch = (out, from, count) => {
    kept.forEach((column, k) => {
      column.set(out.subarray(k * BATCH, k * BATCH + count), from);
    });
  };
  const moments = momentsKnown(sources);
  // Asked for by whoever runs the trials and by the end of them: once a block is enough.
  let known: { readonly blocks: number; readonly reached: Reached } | null = null;
  const reached = (): Reached => {
    if (known?.blocks !== totals.blocks())
      known = { blocks: totals.blocks(), reached: reachedBy(totals, moments, digits) };
    return known.reached;
  };
  const after = nothingYet();
  const workBySteps = (block: number): Steps<BlockTally> =>
    workBlock(block, block < keptBlocks ? keep : undefined);
  const lined = (ended: Ended): Lined => {
    const done = Math.min(keptBlocks, totals.blocks()) * size;
    return linedUp({
      model,
      task,
      totals,
      moments,
      kept: kept.map((column) => column.subarray(0, done)),
      ended: ended === 'trials' && reached().digits >= digits ? 'digits' : ended,
      digitsAsked: digits,
      gaugeSd: options.gauge === undefined ? null : sdOf(options.gauge),
    });
  };
  function* finishing(ended: Ended): Steps<Prediction> {
    const whole = lined(ended);
    yield* workedOut(misfit, sources, whole, after);
    return predictionOf(jobName, misfit, sources, whole, after);
  }
  return {
    task,
    keptBlocks,
    work: (block) => atOnce(workBySteps(block)),
    workBySteps,
    finishing,
    known: () => predictionOf(jobName, misfit, sources, lined('interrupted'), after),
    finish: (ended) => atOnce(finishing(ended)),
    take: totals.take,
    ended: () =>
      totals.blocks() >= task.mostBlocks ? 'trials' : reached().digits >= digits ? 'digits' : null,
    progress: () => ({
      blocks: totals.blocks(),
      trials: totals.blocks() * size,
      likelyTrials: Math.min(task.mostBlocks, totals.blocks() * reached().timesMore) * size,
      digits: reached().digits,
      digitsAsked: digits,
    }),
  };
}

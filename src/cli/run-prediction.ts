import type { Job } from '../job/job.ts';
import { predictedModel } from '../sources/predicted.ts';
import type { PredictOptions } from '../stackup/predict.ts';
import { startPredicting, type Ended, type Predicting } from '../stackup/predicting.ts';
import type { Prediction } from '../stackup/prediction.ts';
import type { Phase, Stage, Steps } from '../stackup/steps.ts';
import type { BlockTally } from '../stackup/tally.ts';
import { EXIT, Refusal } from './exit.ts';
import { progressText, stageText } from './progress-text.ts';
import { workerPool, type WorkerPool } from './worker-pool.ts';

export interface RunOptions extends PredictOptions {
  /** Trials end after so many seconds; null for no such end. */
  readonly seconds: number | null;
  /** A gauge that every part is measured with, as somebody wrote it; its spread stands in `gauge` once the shop is known. */
  readonly gaugeText: string | null;
  /** Threads that work trials. */
  readonly threads: number;
}

/** What goes on outside while trials run. */
export interface Surroundings {
  /** Milliseconds of some clock. */
  readonly now: () => number;
  readonly isInterrupted: () => boolean;
  /** Comes when somebody interrupts. */
  readonly interrupted: Promise<void>;
  /** Told now and then how far the work is, with the milliseconds since it began; and null at the end. */
  readonly progress: (text: (() => string) | null, sinceMs: number) => void;
  /** Lets whatever waits, such as a key, have its turn. */
  readonly pause: () => Promise<void>;
}

/** Threads take longer to start than this, so shorter runs do without. */
const WORTH_THREADS_MS = 400;
/** What waits has its turn this often. */
const TURN_MS = 20;

/**
 * Job to prediction: the model, its sources, the trials, block by block until enough is known, the time is up
 * or somebody stops it; then all that rests on them. With more threads only the time differs. Stopped, it ends
 * within a batch of trials with what is known by then.
 *
 * @throws Refusal when it was stopped before anything was known.
 */
export async function runPrediction(
  job: Job,
  options: RunOptions,
  around: Surroundings,
): Promise<Prediction> {
  const { misfit, sources } = predictedModel(job);
  const began = around.now();
  const under = startPredicting(job.name, misfit, sources, options);
  const since = (): number => around.now() - began;
  try {
    const ended = await tried(job, options, under, around, since);
    if (ended === 'interrupted') {
      if (under.progress().blocks > 0) return under.known();
      throw new Refusal(
        `${job.name}: stopped before the first trials were done; nothing is known`,
        EXIT.stopped,
      );
    }
    const { trials } = under.progress();
    let phase: Phase = 'trials';
    let phaseBegan = 0;
    const whole = await stepped(under.finishing(ended), around, (stage) => {
      if (stage.phase !== phase) phaseBegan = since();
      phase = stage.phase;
      around.progress(() => stageText(trials, stage, since() - phaseBegan), since());
    });
    return whole ?? under.known();
  } finally {
    around.progress(null, since());
  }
}

/** Works and takes blocks until there is an end of it. */
async function tried(
  job: Job,
  options: RunOptions,
  under: Predicting,
  around: Surroundings,
  since: () => number,
): Promise<Ended> {
  const mostMs = options.seconds === null ? Infinity : options.seconds * 1000;
  const tell = (): void => {
    around.progress(() => progressText(under.progress(), since()), since());
  };
  let pool: WorkerPool | null = null;
  const ahead = new Map<number, ReturnType<WorkerPool['work']>>();
  let asked = 0;
  try {
    for (let block = 0; ; block++) {
      const likelyMs =
        block === 0
          ? 0
          : (since() / block) * (under.progress().likelyTrials / trialsAt(under) - block);
      if (
        pool === null &&
        options.threads > 1 &&
        block >= under.keptBlocks &&
        likelyMs > WORTH_THREADS_MS
      )
        pool = workerPool({ job, task: under.task }, options.threads);
      let tally: BlockTally | null;
      if (pool === null) tally = await stepped(under.workBySteps(block), around, tell);
      else {
        // Each thread has one block in hand and one waiting.
        asked = Math.max(asked, block);
        while (asked < under.task.mostBlocks && asked < block + 2 * options.threads) {
          ahead.set(asked, pool.work(asked));
          asked += 1;
        }
        tally = await Promise.race([ahead.get(block)!, around.interrupted.then(() => null)]);
        ahead.delete(block);
        await around.pause();
      }
      if (tally === null) return 'interrupted';
      under.take(tally);
      tell();
      const ended = under.ended() ?? (since() >= mostMs ? 'seconds' : null);
      if (ended !== null) return ended;
      if (around.isInterrupted()) return 'interrupted';
    }
  } finally {
    // Blocks asked for and no longer wanted end with their threads.
    for (const block of ahead.values()) block.catch(() => undefined);
    pool?.close();
  }
}

/** All steps, with a turn for whatever waits between them; null when somebody interrupted. */
async function stepped<T>(
  steps: Steps<T>,
  around: Surroundings,
  tell: (stage: Stage) => void,
): Promise<T | null> {
  let turnAt = around.now();
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    const now = around.now();
    if (now - turnAt < TURN_MS) continue;
    turnAt = now;
    await around.pause();
    if (around.isInterrupted()) return null;
    tell(step.value);
  }
}

const trialsAt = (under: Predicting): number => under.task.batchTrials * under.task.blockBatches;

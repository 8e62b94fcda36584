import type { Job } from '../job/job.ts';
import { predictedModel } from '../sources/predicted.ts';
import type { PredictOptions } from '../stackup/predict.ts';
import { startPredicting, type Predicting } from '../stackup/predicting.ts';
import type { Prediction } from '../stackup/prediction.ts';
import { workerPool, type WorkerPool } from './worker-pool.ts';

export interface RunOptions extends PredictOptions {
  /** Trials end after so many seconds; null for no such end. */
  readonly seconds: number | null;
  /** Threads that work trials. */
  readonly threads: number;
}

/** What goes on outside while trials run. */
export interface Surroundings {
  /** Milliseconds of some clock. */
  readonly now: () => number;
  readonly isInterrupted: () => boolean;
  /** Told now and then how far the trials are, with the milliseconds since they began; and null at the end. */
  readonly progress: (under: Predicting | null, sinceMs: number) => void;
  /** Lets whatever waits, such as a key, have its turn. */
  readonly pause: () => Promise<void>;
}

/** Threads take longer to start than this, so shorter runs do without. */
const WORTH_THREADS_MS = 400;

/**
 * Job to prediction: the model, its sources, the trials, block by block until enough is known, the time is up
 * or somebody stops it. With more threads only the time differs.
 */
export async function runPrediction(
  job: Job,
  options: RunOptions,
  around: Surroundings,
): Promise<Prediction> {
  const { misfit, sources } = predictedModel(job);
  const under = startPredicting(job.name, misfit, sources, options);
  const began = around.now();
  const since = (): number => around.now() - began;
  const mostMs = options.seconds === null ? Infinity : options.seconds * 1000;
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
      if (pool === null) under.take(under.work(block));
      else {
        // Each thread has one block in hand and one waiting.
        asked = Math.max(asked, block);
        while (asked < under.task.mostBlocks && asked < block + 2 * options.threads) {
          ahead.set(asked, pool.work(asked));
          asked += 1;
        }
        under.take(await ahead.get(block)!);
        ahead.delete(block);
      }
      await around.pause();
      around.progress(under, since());
      const ended =
        under.ended() ??
        (around.isInterrupted() ? 'interrupted' : since() >= mostMs ? 'seconds' : null);
      if (ended !== null) {
        around.progress(null, since());
        return under.finish(ended);
      }
    }
  } finally {
    pool?.close();
  }
}

const trialsAt = (under: Predicting): number => under.task.batchTrials * under.task.blockBatches;

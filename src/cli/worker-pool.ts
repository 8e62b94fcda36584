import { Worker } from 'node:worker_threads';
import type { Job } from '../job/job.ts';
import type { BlockTally, Task } from '../stackup/tally.ts';

/** What a thread needs to work blocks: plain data. */
export interface WorkerOrder {
  readonly job: Job;
  readonly task: Task;
}

export interface WorkerPool {
  /** The tally of a block, worked by one of the threads; blocks are begun in the order of asking. */
  readonly work: (block: number) => Promise<BlockTally>;
  readonly close: () => void;
}

/** Threads that work blocks of the same task; each is a plain function of its block, so who works it is the same. */
export function workerPool(order: WorkerOrder, threadCount: number): WorkerPool {
  const threads = Array.from({ length: threadCount }, () => {
    const thread = new Worker(new URL('./trial-worker.js', import.meta.url), { workerData: order });
    const asked: { done: (tally: BlockTally) => void; failed: (error: Error) => void }[] = [];
    thread.on('message', (tally: BlockTally) => asked.shift()?.done(tally));
    thread.on('error', (error: Error) => {
      for (const { failed } of asked.splice(0)) failed(error);
    });
    // A pool that waits must not keep the program alive.
    thread.unref();
    return { thread, asked };
  });
  return {
    work: (block) =>
      new Promise((done, failed) => {
        const free = threads.reduce((a, b) => (b.asked.length < a.asked.length ? b : a));
        free.asked.push({ done, failed });
        free.thread.ref();
        free.thread.postMessage(block);
      }),
    close: () => {
      for (const { thread } of threads) void thread.terminate();
    },
  };
}

/** A thread that works blocks of trials; started by worker-pool.ts with a job and a task. */
import { parentPort, workerData } from 'node:worker_threads';
import { invariant } from '../num/invariant.ts';
import { predictedModel } from '../sources/predicted.ts';
import { modelOf } from '../stackup/model-of.ts';
import { blockWorker } from '../stackup/tally.ts';
import type { WorkerOrder } from './worker-pool.ts';

const port = parentPort;
invariant(port !== null, 'this file runs as a worker only');
const { job, task } = workerData as WorkerOrder;
const { misfit, sources } = predictedModel(job);
const work = blockWorker(modelOf(misfit, sources), task);
port.on('message', (block: number) => {
  const tally = work(block);
  port.postMessage(tally, [tally.bins.buffer as ArrayBuffer]);
});

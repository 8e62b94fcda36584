// Any number of threads: the same prediction, byte for byte. The pool as it is built, with blocks that it really works.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/cli/load.ts';
import type { workerPool } from '../../src/cli/worker-pool.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { startPredicting } from '../../src/stackup/predicting.ts';
import { JIGS, MAIN } from './run.ts';

describe('threads', { timeout: 240_000 }, () => {
  it('one to eight come to the same bytes', async () => {
    const built = pathToFileURL(join(MAIN, '..', 'worker-pool.js')).href;
    const { workerPool: pooled } = (await import(built)) as {
      readonly workerPool: typeof workerPool;
    };
    const { job } = loadJob(join(JIGS, 'wall-clock-plain.yaml'));
    const misfit = misfitModel(job);
    const sources = sourcesOf(job, misfit.deviations);
    // Ten blocks of six batches; the first three are kept and so worked here.
    const options = { seed: 5, trials: 61_440, digits: 4 };
    const saidWith = async (threads: number): Promise<string> => {
      const under = startPredicting(job.name, misfit, sources, options);
      const pool = threads === 0 ? null : pooled({ job, task: under.task }, threads);
      const { mostBlocks } = under.task;
      expect(mostBlocks - under.keptBlocks).toBe(7);
      try {
        const asked = Array.from({ length: mostBlocks }, (_, block) =>
          pool === null || block < under.keptBlocks ? under.work(block) : pool.work(block),
        );
        // Merged in the order of blocks, whoever is done first.
        for (const tally of asked) under.take(await tally);
      } finally {
        pool?.close();
      }
      return JSON.stringify(under.known());
    };
    const alone = await saidWith(0);
    expect(alone).toContain('"trials":61440');
    for (let threads = 1; threads <= 8; threads++) expect(await saidWith(threads)).toBe(alone);
  });
});

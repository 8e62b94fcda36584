import { BATCH } from '../num/batch.ts';

/**
 * Trials are worked in blocks of equal size, each with estimates of its own, whose scatter tells how sure
 * the whole is. Source: JCGM 101:2008, 7.9.2 and 7.9.3 (blocks of 10 000 for a 95 % interval).
 */
export interface Plan {
  readonly seed: number;
  /** Of every addressed batch this many trials are used; all of it unless few trials are asked for. */
  readonly batchTrials: number;
  readonly blockBatches: number;
  readonly mostBlocks: number;
}

/** Two or three blocks agree by luck now and then; ten rarely do. */
export const LEAST_BLOCKS = 10;
const BLOCK_BATCHES = 10;

/** Blocks as the standard has them where `trials` allows ten, else ten smaller ones. */
export function planOf(seed: number, trials: number): Plan {
  const blockTrials = Math.floor(trials / LEAST_BLOCKS);
  const batchTrials = Math.max(1, Math.min(BATCH, blockTrials));
  const blockBatches = Math.max(1, Math.min(BLOCK_BATCHES, Math.floor(blockTrials / BATCH)));
  const mostBlocks = Math.max(1, Math.floor(trials / (batchTrials * blockBatches)));
  return { seed, batchTrials, blockBatches, mostBlocks };
}

export const blockTrialsOf = ({ batchTrials, blockBatches }: Plan): number =>
  batchTrials * blockBatches;

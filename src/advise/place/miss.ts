import type { Job } from '../../job/job.ts';
import type { Estimate } from '../estimate.ts';
import { figuresOf, type Judgements, type Luck } from '../outcome.ts';

/** By how much a need misses its limit on average, in its own unit; below 0: how far inside it is. */
export interface Miss {
  readonly need: string;
  /** Of `needs`, by index. */
  readonly index: number;
  readonly before: number;
  readonly after: number;
  /** Before less after, on the same blanks. */
  readonly nearer: Estimate;
}

/** Of the need that misses by the most standard deviations before, what moving places does; null without needs. */
export function missOf(before: Job, after: Job, luck: Luck): Miss | null {
  const now = figuresOf(before, luck).map(missesOf);
  const then = figuresOf(after, luck).map(missesOf);
  const index = now.reduce((worst, one, k) => (inSds(one) > inSds(now[worst]!) ? k : worst), 0);
  const [old, young] = [now[index], then[index]];
  if (old === undefined || young === undefined) return null;
  const difference = momentsOf(old.map((miss, i) => miss - young[i]!));
  return {
    need: before.needs[index]!.name,
    index,
    before: momentsOf(old).mean,
    after: momentsOf(young).mean,
    nearer: { value: difference.mean, se: difference.sd / Math.sqrt(old.length) },
  };
}

const missesOf = ({ question: { low, high }, lowest, highest }: Judgements): Float64Array =>
  lowest.map((least, i) =>
    Math.max(
      low === null ? -Infinity : low - least,
      high === null ? -Infinity : highest[i]! - high,
    ),
  );

function inSds(misses: Float64Array): number {
  const { mean, sd } = momentsOf(misses);
  return mean === 0 ? 0 : mean / sd;
}

function momentsOf(values: Float64Array): { readonly mean: number; readonly sd: number } {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  const squares = values.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / values.length) };
}

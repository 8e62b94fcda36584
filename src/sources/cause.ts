import type { Spread } from '../job/job.ts';

/** What a deviation draws from, and what it is called. */
export interface Cause {
  readonly id: string;
  readonly words: string;
  readonly spread: Spread;
}

export function cause(id: string, words: string, spread: Spread): Cause {
  return { id, words, spread };
}

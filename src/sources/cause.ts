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

export const isNil = ({ distribution }: Spread): boolean =>
  distribution.kind === 'exactly' && distribution.value === 0;

/** A spread of what cannot happen without any of some others: nothing where all those are switched off. */
export const onlyWith = (others: readonly Spread[], spread: Spread): Spread =>
  others.every(isNil) ? { ...spread, distribution: { kind: 'exactly', value: 0 } } : spread;

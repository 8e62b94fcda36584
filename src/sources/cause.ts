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

/** A spread of what cannot happen without another: nothing where that is switched off. */
export const onlyWith = (other: Spread, spread: Spread): Spread =>
  isNil(other) ? { ...spread, distribution: { kind: 'exactly', value: 0 } } : spread;

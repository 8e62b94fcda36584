import { BATCH } from '../num/batch.ts';
import { deviationKey, type Deviation } from './deviation.ts';

/** Hands out one column of draws for each deviation that a model asks for, in the order of asking. */
export interface Columns {
  /** Offset of the deviation's column: its draw in trial `i` is `draws[offset + i]`. */
  readonly of: (deviation: Deviation) => number;
  readonly asked: () => readonly Deviation[];
}

export function newColumns(): Columns {
  const places = new Map<string, number>();
  const asked: Deviation[] = [];
  return {
    of: (deviation) => {
      const key = deviationKey(deviation);
      const known = places.get(key);
      if (known !== undefined) return known * BATCH;
      places.set(key, asked.length);
      asked.push(deviation);
      return (asked.length - 1) * BATCH;
    },
    asked: () => asked,
  };
}

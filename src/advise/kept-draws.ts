import { BATCH } from '../num/batch.ts';
import type { Distribution } from '../num/distribution.ts';
import { fillDraws } from '../num/draw.ts';
import { fillWords, idOf } from '../num/stream.ts';

/** One batch of draws of a named deviation: the same column whenever it is asked for again. Not to be written to. */
export type KeptDraws = (key: string, distribution: Distribution, batch: number) => Float64Array;

/** Draws by address, as a prediction with that seed draws them, kept: what is tried again and again draws once. */
export function keptDraws(seed: number): KeptDraws {
  const known = new Map<string, Kept[]>();
  return (key, distribution, batch) => {
    const ofKey = known.get(key) ?? [];
    if (ofKey.length === 0) known.set(key, ofKey);
    let kept = ofKey.find((one) => isSame(one.distribution, distribution));
    if (kept === undefined) ofKey.push((kept = { distribution, batches: [] }));
    return (kept.batches[batch] ??= drawn(seed, key, distribution, batch));
  };
}

interface Kept {
  readonly distribution: Distribution;
  readonly batches: Float64Array[];
}

function drawn(seed: number, key: string, distribution: Distribution, batch: number): Float64Array {
  const words = new Int32Array(BATCH);
  const draws = new Float64Array(BATCH);
  fillWords(seed, idOf(key), batch, 1, words, BATCH);
  fillDraws(distribution, words, draws, 0, BATCH);
  return draws;
}

const isSame = (one: Distribution, other: Distribution): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);

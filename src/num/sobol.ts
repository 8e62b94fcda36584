import { invariant } from './invariant.ts';
import { JOE_KUO } from './joe-kuo.ts';
import { streamOf } from './stream.ts';

/** Dimensions there are points in. */
export const SOBOL_DIMENSIONS = JOE_KUO.length + 1;

const BITS = 32;

/**
 * Direction numbers of one dimension, 0 the first, as 32-bit fractions. Source: Joe and Kuo 2008 (see
 * joe-kuo.ts); the first dimension is van der Corput's.
 */
export function directionsOf(dimension: number): Int32Array {
  invariant(dimension < SOBOL_DIMENSIONS, `there are ${SOBOL_DIMENSIONS} Sobol dimensions`);
  const v = new Int32Array(BITS);
  if (dimension === 0) {
    for (let i = 0; i < BITS; i++) v[i] = 1 << (BITS - 1 - i);
    return v;
  }
  const [a, ...m] = JOE_KUO[dimension - 1]! as [number, ...number[]];
  const s = m.length;
  for (let i = 0; i < BITS; i++) {
    if (i < s) {
      v[i] = m[i]! << (BITS - 1 - i);
      continue;
    }
    let next = v[i - s]! ^ (v[i - s]! >>> s);
    for (let k = 1; k < s; k++) if (((a >>> (s - 1 - k)) & 1) === 1) next ^= v[i - k]!;
    v[i] = next;
  }
  return v;
}

/**
 * Fills `words` with the first `count` points of a dimension in Gray-code order, each bit mixed with those above
 * it by a random matrix and shifted: unbiased, and still a net. `count` is to be a power of 2.
 * Source: J. Matousek, J. Complexity 14 (1998) 527-556 (random linear scrambling with a digital shift), from memory.
 *
 * @param seed, id, replicate address the randomness, as in stream.ts.
 */
export function fillScrambled(
  dimension: number,
  seed: number,
  id: number,
  replicate: number,
  words: Int32Array,
  at: number,
  count: number,
): void {
  const random = streamOf(seed, id, replicate, SCRAMBLE_LANE);
  let point = random() | 0;
  // Bits below a bit are random, those above it are nought.
  const columns = Int32Array.from({ length: BITS }, (_, bit) => {
    const own = 1 << (BITS - 1 - bit);
    return own | (random() & (own - 1));
  });
  const scrambled = directionsOf(dimension).map((v) => {
    let mixed = 0;
    for (let bit = 0; bit < BITS; bit++) if ((v >>> (BITS - 1 - bit)) & 1) mixed ^= columns[bit]!;
    return mixed;
  });
  for (let i = 0; i < count; i++) {
    words[at + i] = point;
    point ^= scrambled[31 - Math.clz32((i + 1) & -(i + 1))]!;
  }
}

/** Lane of the addressed streams that scrambles. */
const SCRAMBLE_LANE = 4;

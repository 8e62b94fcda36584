/**
 * Random 32-bit words, addressed: the same (seed, id, batch, lane) always gives the same words, so a
 * new source, or another number of workers, changes nobody else's luck.
 * Generator: sfc32 (C. Doty-Humphrey, PractRand), state filled raw and run in by 12 rounds, so that
 * no two addresses start alike.
 */
export type Stream = () => number;

const RUN_IN = 12;

export function streamOf(seed: number, id: number, batch: number, lane: number): Stream {
  let a = seed >>> 0;
  let b = id >>> 0;
  let c = batch >>> 0;
  let counter = lane >>> 0;
  const next = (): number => {
    const word = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + word) | 0;
    return word >>> 0;
  };
  for (let round = 0; round < RUN_IN; round++) next();
  return next;
}

/**
 * The first `count` words of the stream at that address, signed; `streamOf` with its state in locals,
 * which is where the time goes.
 */
export function fillWords(
  seed: number,
  id: number,
  batch: number,
  lane: number,
  words: Int32Array,
  count: number,
): void {
  let a = seed | 0;
  let b = id | 0;
  let c = batch | 0;
  let counter = lane | 0;
  for (let i = -RUN_IN; i < count; i++) {
    const word = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + word) | 0;
    if (i >= 0) words[i] = word;
  }
}

/** A stable 32-bit number for a name. Source: Fowler, Noll and Vo, FNV-1a for 32 bits (constants from memory; known answers in the tests). */
export function idOf(name: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(name)) {
    hash = Math.imul(hash ^ byte, 0x01000193);
  }
  return hash >>> 0;
}

/** A uniform number strictly between 0 and 1: the middle of one of 2^32 equal steps. */
export function uniformOf(word: number): number {
  return (word + 0.5) * 2.3283064365386963e-10;
}

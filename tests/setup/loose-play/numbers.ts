/** Points that fill the unit cube evenly: Halton's, in bases 2, 3 and 5 (On the efficiency of certain quasi-random sequences, 1960). */
export function cubePoint(index: number): readonly [number, number, number] {
  return [radical(index + 1, 2), radical(index + 1, 3), radical(index + 1, 5)];
}

function radical(index: number, base: number): number {
  let value = 0;
  let share = 1 / base;
  for (let left = index; left > 0; left = Math.floor(left / base)) {
    value += (left % base) * share;
    share /= base;
  }
  return value;
}

export interface Described {
  readonly mean: number;
  readonly sd: number;
  /** At 1, 5, 25, 50, 75, 95 and 99 %. */
  readonly quantiles: readonly number[];
  readonly low: number;
  readonly high: number;
}

export const SHARES = [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99] as const;

export function described(values: readonly number[]): Described {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1);
  const sorted = Float64Array.from(values).sort();
  return {
    mean,
    sd: Math.sqrt(square),
    quantiles: SHARES.map((share) => sorted[Math.floor(share * count)]!),
    low: sorted[0]!,
    high: sorted[count - 1]!,
  };
}

/** Numbers in [0, 1) from a seed: a Weyl sequence, scrambled. */
export function randomsOf(seed: number): () => number {
  let state = Math.imul(seed, 0x85ebca6b) >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let word = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
    return ((word ^ (word >>> 16)) >>> 0) / 2 ** 32;
  };
}

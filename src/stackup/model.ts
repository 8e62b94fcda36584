import type { Distribution } from '../num/distribution.ts';

/**
 * Anything whose outputs are worked out from inputs that are off: the engine knows nothing of
 * blanks or stops. Columns as in num/batch.ts: input `k` of trial `i` at `k * BATCH + i`.
 */
export interface Model {
  readonly inputs: readonly Input[];
  readonly outputCount: number;
  readonly evaluate: (draws: Float64Array, count: number, out: Float64Array) => void;
}

export interface Input {
  /** Address of its stream; see `idOf`. */
  readonly id: number;
  readonly distribution: Distribution;
}

import type { Distribution } from '../num/distribution.ts';

export interface PredictOptions {
  readonly seed: number;
  /** No more trials than this, 10 or more. */
  readonly trials: number;
  /** Trials end when so many digits of every number are certain, 1 to 4; left out: 2. */
  readonly digits?: number;
  /** Error of a gauge that every part is measured with; left out: none is. */
  readonly gauge?: Distribution;
}

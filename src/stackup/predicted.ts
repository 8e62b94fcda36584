import type { Straight } from './first-order.ts';
import type { Model } from './model.ts';

/** A model with its trials, a column a result, and its straight line: what every need is read from. */
export interface Predicted {
  readonly model: Model;
  readonly line: Straight;
  readonly results: readonly Float64Array[];
}

/** How many of the trials a prediction shows. */
export const CLOUD = 400;

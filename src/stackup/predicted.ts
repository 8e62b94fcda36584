import type { MomentsKnown } from './certain.ts';
import type { Straight } from './first-order.ts';
import type { Model } from './model.ts';
import type { Ended } from './predicting.ts';
import type { Task } from './tally.ts';
import type { Totals } from './totals.ts';

/** A model with its trials, summed up: what every need is read from. */
export interface Predicted {
  readonly model: Model;
  readonly task: Task;
  readonly totals: Totals;
  readonly moments: MomentsKnown;
  /** The first trials whole, a column a result. */
  readonly kept: readonly Float64Array[];
  readonly ended: Ended;
  readonly digitsAsked: number;
  /** Standard uncertainty of the gauge that parts are measured with, mm; null without one. */
  readonly gaugeSd: number | null;
}

/** The same with its straight line and the results with nothing off. */
export interface Lined extends Predicted {
  readonly line: Straight;
  readonly atNothing: readonly number[];
}

/** How many of the trials a prediction shows. */
export const CLOUD = 400;

import { blankActions } from './blank-actions.ts';
import { looseActions } from './loose-actions.ts';
import { shopActions } from './shop-actions.ts';
import { stopsActions } from './stops-actions.ts';
import { zeroActions } from './zero-actions.ts';
import type { Action, Case } from './action.ts';

/** Everything that could be done about a job, in no order; whether it gains anything is for the trials to say. */
export const allActions = (of: Case): readonly Action[] => [
  ...stopsActions(of),
  ...zeroActions(of),
  ...blankActions(of),
  ...looseActions(of),
  ...shopActions(of),
];

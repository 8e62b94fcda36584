import type { Chance } from '../stackup/chance.ts';
import type { Prediction } from '../stackup/prediction.ts';

/** The chances of one need in two predictions. */
export interface Difference {
  readonly need: string;
  readonly before: Chance;
  readonly after: Chance;
}

/** What two ways of making the same part come to, for every need that both have, in the order of the first. */
export function differences(before: Prediction, after: Prediction): readonly Difference[] {
  return before.needs.flatMap((need) => {
    const same = after.needs.find((other) => other.name === need.name);
    return same === undefined ? [] : [{ need: need.name, before: need, after: same }];
  });
}

import type { HoldInput } from './hold-input.ts';
import { placingPlan, type PlacingPlan } from './placing-plan.ts';

export interface HoldPlan {
  readonly frontUp: PlacingPlan;
  readonly backUp: PlacingPlan;
}

/** The plan of both placings: the first placing's clamps are chosen first, the second's like them where it can be. */
export function holdPlan(input: HoldInput): HoldPlan {
  const [first, second] =
    input.job.first === 'front'
      ? (['frontUp', 'backUp'] as const)
      : (['backUp', 'frontUp'] as const);
  const one = placingPlan(input, first, []);
  const two = placingPlan(input, second, one.layout?.straps ?? []);
  return first === 'frontUp' ? { frontUp: one, backUp: two } : { frontUp: two, backUp: one };
}

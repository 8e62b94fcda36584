import { expect } from 'vitest';
import { advised } from '../../src/hold/advised.ts';
import { changed } from '../../src/hold/change.ts';
import type { HoldInput } from '../../src/hold/hold-input.ts';
import { holdPlan } from '../../src/hold/plan.ts';
import { isBlankGood } from '../../src/hold/placing-plan.ts';
import type { Holding } from '../../src/job/holding.ts';
import type { StopsJob } from '../../src/job/job.ts';
import { placed } from '../jig/a-job.ts';

export const inputOf = (job: StopsJob, holding: Holding): HoldInput => ({
  job,
  holding,
  placings: placed(job),
  standingOf: () => ({ frontUp: [], backUp: [] }),
  programs: { frontUp: null, backUp: null },
});

/** Every remedy that is offered for a job does what it says when the whole job is planned with it; how many there were. */
export function expectRemediesDo(input: HoldInput): number {
  const plan = advised(input, holdPlan(input));
  let offered = 0;
  for (const which of ['frontUp', 'backUp'] as const) {
    for (const change of plan[which].remedies) {
      offered += 1;
      expect(isBlankGood(holdPlan(changed(input, change))[which]), JSON.stringify(change)).toBe(
        true,
      );
    }
    for (const { piece, remedies } of plan[which].pieces)
      for (const change of remedies) {
        offered += 1;
        const next = holdPlan(changed(input, change))[which].pieces;
        const same = next.find((one) => one.piece.name === piece.name);
        expect(same === undefined || same.isHeld, JSON.stringify(change)).toBe(true);
      }
  }
  return offered;
}

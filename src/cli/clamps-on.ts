import type { PlacingPlan } from '../hold/plan.ts';
import type { InBed } from '../jig/program/in-bed.ts';
import type { Holding } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import { dowelHolesIn } from '../job/located.ts';
import type { Body } from '../sweep/body.ts';
import { Refusal } from './exit.ts';
import { holdJob } from './hold-job.ts';

/**
 * The clamps and screws that hold the blank by our own plan, for programs that run while it is held; null
 * when no program does, or when no plan can be made.
 */
export function clampsOn(job: Job, holding: Holding): InBed['clamps'] {
  const isBored = dowelHolesIn(job)?.drilled === 'with-the-blank';
  if (!isBored && job.jig['waste-combs'] === undefined) return null;
  try {
    const { plan } = holdJob(job, holding, () => undefined);
    return { frontUp: bodiesIn(plan.frontUp), backUp: bodiesIn(plan.backUp) };
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

const bodiesIn = ({ layout, screws }: PlacingPlan): readonly Body[] => [
  ...(layout?.straps ?? []).flatMap(({ bodies }) => bodies),
  ...screws.map(({ body }) => body),
];

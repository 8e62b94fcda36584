import type { HoldPlan } from '../hold/plan.ts';
import type { PlacingPlan } from '../hold/placing-plan.ts';
import type { InBed } from '../jig/program/in-bed.ts';
import type { Job } from '../job/job.ts';
import { dowelHolesIn } from '../job/located.ts';
import type { Body } from '../sweep/body.ts';

/** Whether a program of the jig runs while clamps or screws hold the blank. */
export const runsWhileHeld = (job: Job): boolean =>
  dowelHolesIn(job)?.drilled === 'with-the-blank' || job.jig['waste-combs'] !== undefined;

/** The clamps and screws that hold the blank by our own plan. */
export const clampsIn = (plan: HoldPlan): NonNullable<InBed['clamps']> => ({
  frontUp: bodiesIn(plan.frontUp),
  backUp: bodiesIn(plan.backUp),
});

const bodiesIn = ({ layout, screws }: PlacingPlan): readonly Body[] => [
  ...(layout?.straps ?? []).flatMap(({ bodies }) => bodies),
  ...screws.map(({ body }) => body),
];

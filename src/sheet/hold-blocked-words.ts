import type { Refused } from '../hold/candidates.ts';
import { isBlankGood, type PlacingPlan } from '../hold/placing-plan.ts';
import type { Job, Units } from '../job/job.ts';
import { changeWords } from './hold-change-words.ts';
import type { HoldLine } from './hold-words.ts';
import { lengthText } from './words.ts';

/** When the blank is not held or something is struck: what is in the way of straps, and what would make room. */
export function blockedLines(job: Job, plan: PlacingPlan): readonly HoldLine[] {
  const { remedies } = plan;
  const why = whyBlocked(plan, job.shop.units);
  if (isBlankGood(plan)) return why;
  return [
    ...why,
    remedies.length > 0
      ? {
          kind: 'plain',
          text: `what would do, each planned anew and found good: ${remedies.map((one) => changeWords(job, one)).join('; or ')}`,
        }
      : {
          kind: 'plain',
          text: 'no single change that was tried makes it good, nor the pairs of changes: choose a larger blank, other places for its cuts, or another way to locate it',
        },
  ];
}

function whyBlocked(plan: PlacingPlan, units: Units): readonly HoldLine[] {
  const { candidates, verdict, layout, screws } = plan;
  if (verdict?.isHeld !== false) return [];
  const { refused, free, outOfReachCount } = candidates;
  if (free.length + refused.length + outOfReachCount === 0) {
    const text =
      screws.length === 0
        ? 'there are no clamps, no bolts for them, or no screws: write hold-downs and inserts in the shop file, or hold: screws, tape or vacuum in the job'
        : 'the screws alone do not hold it';
    return [{ kind: 'bad', text }];
  }
  const lines: string[] = [];
  if (layout === null)
    lines.push(
      free.length === 0
        ? 'no strap can lie on this blank'
        : 'the bolts that are pinned cannot all be used at once',
    );
  else lines.push('the straps that can lie do not hold it');
  lines.push(...struckLines(refused, units), ...hollowLines(refused), ...standingLines(refused));
  const beside = refused.filter(({ because }) => because.kind === 'beside').length;
  if (beside > 0) lines.push(`${beside} straps would come down beside the part`);
  if (free.length + refused.length < outOfReachCount)
    lines.push(`${outOfReachCount} bolts are under the blank or out of a strap’s reach`);
  return lines.map((text) => ({ kind: 'bad', text }));
}

function struckLines(refused: readonly Refused[], units: Units): readonly string[] {
  const struck = refused.flatMap(({ because }) =>
    because.kind === 'struck' ? [because.clash] : [],
  );
  if (struck.length === 0) return [];
  return [...new Set(struck.map(({ what }) => what))].map((what) => {
    const own = struck.filter((clash) => clash.what === what);
    const least = own.reduce((low, clash) => (clash.shortMm < low.shortMm ? clash : low));
    return `${own.length} places for straps are passed too low by the ${what}, at best by ${lengthText(least.shortMm, units)}`;
  });
}

function hollowLines(refused: readonly Refused[]): readonly string[] {
  const features = refused.flatMap(({ because }) =>
    because.kind === 'hollow' ? [because.feature] : [],
  );
  if (features.length === 0) return [];
  const names = [...new Set(features)].join(', ');
  return [`${features.length} places lie over ${names}, without solid wood down to the bed`];
}

function standingLines(refused: readonly Refused[]): readonly string[] {
  const bodies = refused.flatMap(({ because }) =>
    because.kind === 'in-the-way' ? [because.body] : [],
  );
  if (bodies.length === 0) return [];
  return [`${bodies.length} places are taken by ${[...new Set(bodies)].join(', ')}`];
}

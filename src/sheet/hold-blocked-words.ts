import type { Refused } from '../hold/candidates.ts';
import type { PlacingPlan } from '../hold/plan.ts';
import type { Units } from '../job/job.ts';
import type { HoldLine } from './hold-words.ts';
import { lengthText } from './words.ts';

/** When straps alone do not hold: what is in their way, and what would make room. */
export function blockedLines(plan: PlacingPlan, units: Units): readonly HoldLine[] {
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
  if (free.length + refused.length < outOfReachCount)
    lines.push(
      `${outOfReachCount} bolts are under the blank or out of a strap’s reach: move the blank on the bed (on-bed), or add straps with longer slots`,
    );
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
    const by = lengthText(least.shortMm, units);
    const remedy =
      what === 'cutter'
        ? `a blank that reaches further beyond the cut, or straps ${by} lower`
        : what === 'dust shoe'
          ? `the shoe taken off or ${by} higher, or straps that much lower`
          : `the cutter ${by} further out of the collet, or straps that much lower`;
    return `${own.length} places are passed too low by the ${what}, at best by ${by}; what would make room: ${remedy}`;
  });
}

function hollowLines(refused: readonly Refused[]): readonly string[] {
  const features = refused.flatMap(({ because }) =>
    because.kind === 'hollow' ? [because.feature] : [],
  );
  if (features.length === 0) return [];
  const names = [...new Set(features)].join(', ');
  return [
    `${features.length} places lie over ${names}, without solid wood down to the bed; what would make room: a filler in the pocket (hold: filler: yes), or a wider border`,
  ];
}

function standingLines(refused: readonly Refused[]): readonly string[] {
  const bodies = refused.flatMap(({ because }) =>
    because.kind === 'in-the-way' ? [because.body] : [],
  );
  if (bodies.length === 0) return [];
  return [
    `${bodies.length} places are taken by ${[...new Set(bodies)].join(', ')}; what would make room: bolts further from it`,
  ];
}

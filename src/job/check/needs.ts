import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { KnownNeed } from '../resolve/needs.ts';
import { suggestion } from '../schema/closest.ts';
import { said } from '../text/said.ts';
import type { Known } from './job.ts';

/** A need must be about features that are there, and be met by the drawing itself. */
export function checkNeeds(context: Context, known: Known): void {
  const { raw, needs } = known;
  if (raw.needs?.length === 0 && !context.touched.has(raw.needs))
    fault(
      context,
      [raw, 'needs'],
      'there is no need, so there is nothing to predict',
      'write - {name: shaft in the pocket, concentric: [shaft hole, pocket], within: 0.2}',
    );
  const seen = new Set<string>();
  for (const need of needs) {
    const { name } = need.need;
    if (seen.has(name))
      fault(
        context,
        [need.raw, 'name'],
        `a second need is called ${name}`,
        'give each its own name',
      );
    seen.add(name);
    checkConcentric(context, known, need);
    checkPoint(context, known, need);
  }
}

function checkConcentric(context: Context, known: Known, { need, raw }: KnownNeed): void {
  if (need.kind !== 'concentric' || raw.concentric === undefined) return;
  const [a, b] = need.features;
  if (a === b) {
    fault(
      context,
      [raw.concentric, 1],
      `${need.name} compares ${a} with itself`,
      'name two features',
    );
    return;
  }
  const pair = need.features.map((name, index) => {
    const found = known.features.find(({ feature }) => feature.name === name);
    if (found === undefined && !known.names.features.includes(name))
      fault(
        context,
        [raw.concentric!, index],
        `no feature is called ${name}`,
        suggestion(name, known.names.features, 'feature'),
      );
    return found;
  });
  const [one, other] = pair;
  if (one === undefined || other === undefined) return;
  const offMm = Math.hypot(
    one.feature.at.x - other.feature.at.x,
    one.feature.at.y - other.feature.at.y,
  );
  if (offMm > 0)
    fault(
      context,
      [raw, 'concentric'],
      `${a} and ${b} are drawn ${said(offMm)} mm apart, so they cannot be concentric`,
      'give them the same at',
    );
}

function checkPoint(context: Context, { blank }: Known, { need, raw }: KnownNeed): void {
  if (need.kind !== 'misalignment' || raw.misalignment === undefined || blank === null) return;
  const sizes = { x: blank.widthMm, y: blank.heightMm };
  for (const [index, axis] of (['x', 'y'] as const).entries()) {
    if (need.at[axis] >= 0 && need.at[axis] <= sizes[axis]) continue;
    fault(
      context,
      [raw.misalignment, index],
      `misalignment at ${axis} = ${said(need.at[axis])} mm is off the blank, which spans 0 to ${said(sizes[axis])} mm`,
      `write 0 to ${said(sizes[axis])}`,
    );
  }
}

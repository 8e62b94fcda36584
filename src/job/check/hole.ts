import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { featureOfCopy } from '../resolve/repeat.ts';
import { suggestion } from '../schema/closest.ts';
import type { RawZero } from '../schema/raw-job.ts';
import type { Known } from './job.ts';

/** Zero at a hole: one that the first placing has cut right through, so that its centre can be found. */
export function checkHole(context: Context, known: Known, zero: RawZero, isFirst: boolean): void {
  if (zero.xy !== 'hole' || zero.hole === undefined) return;
  const { raw, features, copies, names } = known;
  if (isFirst) {
    fault(
      context,
      [zero, 'xy'],
      'no hole is there yet in the first placing',
      'write stops, milled-stops, edges or middle',
    );
    return;
  }
  const found = features.find(({ feature }) =>
    [feature.name, ...copies.map((copy) => featureOfCopy(feature, copy).name)].includes(zero.hole!),
  );
  if (found === undefined) {
    if (!names.features.includes(zero.hole))
      fault(
        context,
        [zero, 'hole'],
        `no feature is called ${zero.hole}`,
        suggestion(zero.hole, names.features, 'feature'),
      );
    return;
  }
  if (context.spoilt.has(found.raw)) return;
  const { name, face, shape, through } = found.feature;
  const first = raw.first ?? 'front';
  if (face !== first)
    fault(
      context,
      [zero, 'hole'],
      `${name} is cut from the ${face}, so it is not there yet`,
      `name a hole that is cut from the ${first}`,
    );
  else if (shape.kind !== 'circle')
    fault(
      context,
      [zero, 'hole'],
      `${name} is a ${shape.kind}, and the centre of a round hole is found`,
      'name a circle',
    );
  else if (!through)
    fault(
      context,
      [zero, 'hole'],
      `${name} does not go through, so it faces the bed in the second placing`,
      'name a hole with depth: through',
    );
}

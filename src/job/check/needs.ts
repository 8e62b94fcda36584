import { unreachable } from '../../num/invariant.ts';
import type { Feature, Need } from '../job.ts';
import type { At, Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { KnownNeed } from '../resolve/needs.ts';
import { suggestion } from '../schema/closest.ts';
import type { RawNeed } from '../schema/raw-job.ts';
import type { Known } from './job.ts';
import { checkDepth, checkSize, checkWall } from './need/of-one.ts';
import { checkConcentric, checkLip, checkMeets, checkParallel, checkWeb } from './need/of-two.ts';
import { checkPoint } from './need/point.ts';

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
    checkNeed(context, known, need);
  }
}

function checkNeed(context: Context, known: Known, { need, raw }: KnownNeed): void {
  switch (need.kind) {
    case 'goes-on':
      return;
    case 'misalignment':
      checkPoint(context, known.blank, need, raw);
      return;
    case 'concentric':
    case 'lip':
    case 'web':
    case 'meets':
    case 'parallel': {
      const pair = pairOf(context, known, need, raw[need.kind] ?? raw);
      if (pair !== null) checkPair(context, known, { need, raw }, pair);
      return;
    }
    case 'wall':
    case 'depth':
    case 'size': {
      const feature = featureNamed(context, known, [raw, need.kind], need.feature);
      if (feature === null) return;
      if (need.kind === 'depth') checkDepth(context, need, raw, feature);
      else if (need.kind === 'size') checkSize(context, need, raw, feature);
      else checkWall(context, known.blank, need, raw, feature);
      return;
    }
    default:
      unreachable(need);
  }
}

export type Pair = readonly [Feature, Feature];
type OfTwo = Extract<Need, { readonly features: readonly [string, string] }>;

function checkPair(
  context: Context,
  { blank }: Known,
  { need, raw }: { readonly need: Need; readonly raw: RawNeed },
  pair: Pair,
): void {
  if (need.kind === 'concentric') checkConcentric(context, need, raw, pair);
  else if (need.kind === 'lip') checkLip(context, need, raw, pair);
  else if (need.kind === 'parallel') checkParallel(context, need, raw, pair);
  else if (need.kind === 'web') checkWeb(context, blank, need, raw, pair);
  else if (need.kind === 'meets') checkMeets(context, blank, need, raw, pair);
}

/** Both features of a need; null, with what is wrong, when they are not two that are known. */
function pairOf(context: Context, known: Known, need: OfTwo, written: object): Pair | null {
  const [a, b] = need.features;
  if (a === b) {
    fault(context, [written, 1], `${need.name} compares ${a} with itself`, 'name two features');
    return null;
  }
  const one = featureNamed(context, known, [written, 0], a);
  const other = featureNamed(context, known, [written, 1], b);
  return one === null || other === null ? null : [one, other];
}

/** The feature of that name; null when there is none (a fault) or when its own entry is faulty. */
function featureNamed(context: Context, known: Known, at: At, name: string): Feature | null {
  const found = known.features.find(({ feature }) => feature.name === name);
  if (found === undefined && !known.names.features.includes(name))
    fault(
      context,
      at,
      `no feature is called ${name}`,
      suggestion(name, known.names.features, 'feature'),
    );
  return found === undefined || context.spoilt.has(found.raw) ? null : found.feature;
}

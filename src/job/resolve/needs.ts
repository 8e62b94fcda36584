import { invariant } from '../../num/invariant.ts';
import type { Edge, Limits, Need } from '../job.ts';
import { inWords } from '../schema/closest.ts';
import { isSlope } from '../schema/quantities.ts';
import type { RawNeed } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault, startPlace } from './context.ts';
import { mm, mmOrNull, pointMm, tangent } from './lengths.ts';

/** A need, and the mapping it was written in. */
export interface KnownNeed {
  readonly need: Need;
  readonly raw: RawNeed;
}

export function needsOf(context: Context, raws: readonly RawNeed[]): readonly KnownNeed[] {
  return raws.flatMap((raw) => {
    const need = needOf(context, raw);
    return need === null ? [] : [{ need, raw }];
  });
}

type Kind = Exclude<Need['kind'], 'goes-on'>;

/** By what each kind of need is judged. */
const JUDGED_BY: Readonly<Record<Kind, 'within' | 'slope' | 'limits'>> = {
  concentric: 'within',
  misalignment: 'within',
  meets: 'within',
  parallel: 'slope',
  lip: 'limits',
  web: 'limits',
  wall: 'limits',
  depth: 'limits',
  size: 'limits',
};
const KINDS = Object.keys(JUDGED_BY) as readonly Kind[];

function needOf(context: Context, raw: RawNeed): Need | null {
  const given = KINDS.filter((kind) => raw[kind] !== undefined);
  const [kind] = given;
  if (kind === undefined || given.length > 1) {
    if (given.length > 0 || !context.touched.has(raw))
      fault(
        context,
        startPlace(context, raw),
        kind === undefined
          ? `the need ${raw.name} does not say what it is about`
          : `the need ${raw.name} is about ${given.length} things: ${given.join(', ')}`,
        `write one of ${inWords(KINDS)}, as in concentric: [shaft hole, pocket]`,
      );
    return null;
  }
  refuseStrayKeys(context, raw, kind);
  return JUDGED_BY[kind] === 'limits'
    ? withLimits(context, raw, kind)
    : withWithin(context, raw, kind);
}

function refuseStrayKeys(context: Context, raw: RawNeed, kind: Kind): void {
  const stray = (key: keyof RawNeed, why: string, instead: string): void => {
    if (raw[key] !== undefined) fault(context, [raw, key], `${key} ${why}`, instead);
  };
  if (kind !== 'wall')
    stray('to', `is for a wall, and ${raw.name} is about ${kind}`, 'take it out');
  if (kind !== 'size')
    stray('along', `is for a size, and ${raw.name} is about ${kind}`, 'take it out');
  if (JUDGED_BY[kind] === 'limits') {
    stray('within', `is not for ${kind}, which is judged by its own measure`, LIMITS_INSTEAD);
    return;
  }
  const instead = `write ${JUDGED_BY[kind] === 'slope' ? A_SLOPE : A_LENGTH}`;
  for (const key of ['at-least', 'from', 'up-to'] as const)
    stray(key, `is not for ${kind}, which is judged by how far it is off`, instead);
}

const A_LENGTH = 'within: 0.2';
const A_SLOPE = 'within: 0.1 per 100';
const LIMITS_INSTEAD = 'write at-least: 2.5, or up-to: 3.5, or from: 2.5 and up-to: 3.5';

function withWithin(context: Context, raw: RawNeed, kind: Kind): Need | null {
  const { name, within } = raw;
  const wantsSlope = JUDGED_BY[kind] === 'slope';
  if (within === undefined) {
    if (!context.touched.has(raw))
      fault(
        context,
        startPlace(context, raw),
        `the need ${name} has no limit`,
        `write ${wantsSlope ? A_SLOPE : A_LENGTH}`,
      );
    return null;
  }
  if (isSlope(within) !== wantsSlope) {
    fault(
      context,
      [raw, 'within'],
      `within ${within} is a ${wantsSlope ? 'length' : 'slope'}, and ${kind} is judged by a ${wantsSlope ? 'slope' : 'length'}`,
      `write ${wantsSlope ? A_SLOPE : A_LENGTH}`,
    );
    return null;
  }
  if (raw.parallel !== undefined)
    return { kind: 'parallel', name, features: raw.parallel, withinTangent: tangent(within) };
  const withinMm = mm(within);
  if (raw.concentric !== undefined)
    return { kind: 'concentric', name, features: raw.concentric, withinMm };
  if (raw.meets !== undefined) return { kind: 'meets', name, features: raw.meets, withinMm };
  invariant(raw.misalignment !== undefined, `${kind} is not judged by within`);
  return { kind: 'misalignment', name, at: pointMm(raw.misalignment), withinMm };
}

function withLimits(context: Context, raw: RawNeed, kind: Kind): Need | null {
  const { name } = raw;
  const limits = limitsOf(context, raw);
  if (raw.size !== undefined && raw.along === undefined) {
    if (!context.touched.has(raw))
      fault(
        context,
        startPlace(context, raw),
        `the need ${name} does not say along which axis`,
        'write along: x, or along: y',
      );
    return null;
  }
  if (limits === null) return null;
  if (raw.lip !== undefined) return { kind: 'lip', name, features: raw.lip, limits };
  if (raw.web !== undefined) return { kind: 'web', name, features: raw.web, limits };
  if (raw.depth !== undefined) return { kind: 'depth', name, feature: raw.depth, limits };
  if (raw.wall !== undefined) {
    const to = (raw.to?.replace('-edge', '') ?? null) as Edge | null;
    return { kind: 'wall', name, feature: raw.wall, to, limits };
  }
  invariant(raw.size !== undefined && raw.along !== undefined, `${kind} is not judged by limits`);
  return { kind: 'size', name, feature: raw.size, along: raw.along, limits };
}

function limitsOf(context: Context, raw: RawNeed): Limits | null {
  const { name, from, 'at-least': atLeast, 'up-to': upTo } = raw;
  if (from !== undefined && atLeast !== undefined)
    fault(
      context,
      [raw, 'from'],
      `the need ${name} has both at-least and from`,
      'write at-least alone, or from beside up-to',
    );
  const limits = { lowMm: mmOrNull(atLeast ?? from), highMm: mmOrNull(upTo) };
  if (limits.lowMm === null && limits.highMm === null) {
    if (!context.touched.has(raw))
      fault(context, startPlace(context, raw), `the need ${name} has no limit`, LIMITS_INSTEAD);
    return null;
  }
  if (limits.lowMm === null || limits.highMm === null || limits.lowMm < limits.highMm)
    return limits;
  fault(
    context,
    [raw, 'up-to'],
    `up-to ${upTo ?? ''} is not above ${atLeast === undefined ? 'from' : 'at-least'} ${atLeast ?? from ?? ''}`,
    'write the smaller of the two first',
  );
  return null;
}

import type { Default } from '../defaults.ts';
import { DEFAULTS } from '../defaults.ts';
import type { Job, TouchTool, Zero, ZeroXy } from '../job.ts';
import { suggestion } from '../schema/closest.ts';
import type { RawZero, RawZeros } from '../schema/raw-job.ts';
import type { RawShopParts } from '../schema/raw-shop.ts';
import { shifted } from '../text/distribution.ts';
import type { Context } from './context.ts';
import { fault, startPlace } from './context.ts';
import { mm, pointMm } from './lengths.ts';
import type { KnownMachine } from './machine.ts';
import { assumed, spreadAt } from './spread.ts';

type Tools = NonNullable<RawShopParts['touch-off']>;

/** What zero is touched with; `isKnown` is false when the shop file could not be read. */
export interface Bench {
  readonly tools: Tools;
  readonly isKnown: boolean;
  readonly machine: KnownMachine;
}

export function zerosOf(context: Context, raw: RawZeros, bench: Bench): Job['zero'] | null {
  const frontUp = zeroOf(context, raw['front-up'], bench);
  const backUp = zeroOf(context, raw['back-up'], bench);
  return frontUp === null || backUp === null ? null : { frontUp, backUp };
}

/** A touch that is further off than this has touched something else. */
const LARGEST_BIAS_MM = 2;

function zeroOf(context: Context, raw: RawZero, bench: Bench): Zero | null {
  const xy = xyOf(context, raw, bench);
  const touched = raw['z-touched'];
  const tool = toolOf(context, raw, bench, { ...DEFAULTS.paperTouch, recurs: 'placing' });
  if (xy === null) return null;
  return { xy, z: { on: raw.z, at: touched === undefined ? null : pointMm(touched), tool } };
}

function xyOf(context: Context, raw: RawZero, bench: Bench): ZeroXy | null {
  const touched = raw['xy-touched'];
  const at = touched === undefined ? null : pointMm(touched);
  if (raw.xy !== 'kept' && raw.kept !== undefined)
    fault(
      context,
      [raw, 'kept'],
      `kept: ${raw.kept} is for a zero that is kept, and xy is ${raw.xy}`,
      'take it out, or write xy: kept',
    );
  if (raw.xy !== 'hole' && raw.hole !== undefined)
    fault(
      context,
      [raw, 'hole'],
      `hole: ${raw.hole} is for a zero at a hole, and xy is ${raw.xy}`,
      'take it out, or write xy: hole',
    );
  switch (raw.xy) {
    case 'stops':
      return { kind: raw.xy, at, tool: toolOf(context, raw, bench, DEFAULTS.paperTouch) };
    case 'edges':
    case 'middle':
      return { kind: raw.xy, at, tool: toolOf(context, raw, bench, DEFAULTS.restingTouch) };
    case 'milled-stops':
    case 'dowels':
    case 'nest':
      if (touched !== undefined)
        fault(
          context,
          [raw, 'xy-touched'],
          `xy-touched says where a zero is touched, and one from ${FROM_MAKING[raw.xy]} is not`,
          'take it out',
        );
      return raw.xy === 'milled-stops' ? { kind: raw.xy, at: null } : { kind: raw.xy };
    case 'hole':
      return holeOf(context, raw, bench);
    case 'kept':
      return keptOf(context, raw, bench.machine);
  }
}

const FROM_MAKING = {
  'milled-stops': 'milling the stops',
  dowels: 'drilling the bed for the dowels',
  nest: 'cutting the nest',
} as const;

function holeOf(context: Context, raw: RawZero, bench: Bench): ZeroXy | null {
  if (raw['xy-touched'] !== undefined)
    fault(
      context,
      [raw, 'xy-touched'],
      'xy-touched says where a zero is touched, and the centre of a hole is found all round it',
      'take it out',
    );
  if (raw.hole === undefined) {
    if (!context.touched.has(raw))
      fault(
        context,
        startPlace(context, raw),
        'xy: hole does not say which',
        'write hole: shaft hole, the name of a round hole that is cut through',
      );
    return null;
  }
  const tool = toolOf(context, raw, bench, DEFAULTS.restingTouch);
  return { kind: 'hole', feature: raw.hole, tool };
}

function keptOf(context: Context, raw: RawZero, machine: KnownMachine): ZeroXy | null {
  if (raw['xy-touched'] !== undefined)
    fault(
      context,
      [raw, 'xy-touched'],
      'xy-touched says where a zero is touched, and this one is kept',
      'take it out',
    );
  switch (raw.kept) {
    case 'held':
      return { kind: 'kept', how: 'held', extra: null };
    case 're-homed':
      return { kind: 'kept', how: 're-homed', extra: machine.homing };
    case 'power-off':
      return { kind: 'kept', how: 'power-off', extra: machine.powerOff };
    case undefined:
      if (!context.touched.has(raw))
        fault(
          context,
          startPlace(context, raw),
          'xy: kept does not say what happened in between',
          'write kept: held, re-homed or power-off',
        );
      return null;
  }
}

/** Without a tool: paper on the stops, the cutter at rest on edges. */
function toolOf(context: Context, raw: RawZero, bench: Bench, row: Default): TouchTool {
  const plain = row === DEFAULTS.restingTouch ? 'the cutter at rest' : 'paper';
  const name = raw.with;
  if (name === undefined) return { name: plain, spread: assumed(row) };
  const tool = Object.hasOwn(bench.tools, name) ? bench.tools[name] : undefined;
  if (tool === undefined) {
    if (bench.isKnown && name !== 'paper' && !context.touched.has(bench.tools))
      fault(
        context,
        [raw, 'with'],
        `the touch tool ${name} is not in the shop file`,
        suggestion(name, Object.keys(bench.tools), 'touch-off there'),
      );
    return { name, spread: assumed({ ...DEFAULTS.paperTouch, recurs: row.recurs }) };
  }
  const fallback = { ...DEFAULTS.paperTouch, recurs: row.recurs };
  const spread = spreadAt(context, [tool, 'spread'], tool.spread, fallback);
  const biasMm = tool.bias === undefined ? 0 : mm(tool.bias);
  if (Math.abs(biasMm) > LARGEST_BIAS_MM)
    fault(
      context,
      [tool, 'bias'],
      `${name} is always ${biasMm} mm off, which is no touch`,
      `write at most ${LARGEST_BIAS_MM} mm, or measure the tool's thickness again`,
    );
  const distribution = shifted(spread.distribution, biasMm);
  if (distribution === null)
    fault(
      context,
      [tool, 'bias'],
      `${name} has a bias, and its spread ${spread.text} starts at 0 already`,
      'take out the bias, or write a spread such as ±0.02',
    );
  const text = biasMm === 0 ? spread.text : `${spread.text}, always ${tool.bias ?? 0} off`;
  return { name, spread: { ...spread, distribution: distribution ?? spread.distribution, text } };
}

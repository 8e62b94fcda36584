import { BY_DRIVE, DEFAULTS } from '../defaults.ts';
import type { AboveTip, Machine, Spread } from '../job.ts';
import type { RawAboveTip, RawMachine, RawSpread } from '../schema/raw-shop.ts';
import { readLength } from '../text/length.ts';
import { plainSigns } from '../text/spread.ts';
import type { Context } from './context.ts';
import { fault, startPlace, statedAt } from './context.ts';
import { mm } from './lengths.ts';
import { spreadAt } from './spread.ts';

/** The machine, and what homing or a power cycle adds to a zero that is kept. */
export interface KnownMachine {
  readonly machine: Machine;
  readonly homing: Spread;
  readonly powerOff: Spread;
}

export function machineOf(context: Context, raw: RawMachine): KnownMachine {
  const drive = raw.drive ?? 'screw';
  const at = (key: keyof RawMachine) => [raw, key] as const;
  const spread = (key: SpreadKey, row: Parameters<typeof spreadAt>[3]): Spread =>
    spreadAt(context, at(key), raw[key], row);
  return {
    machine: {
      travelMm: travelOf(context, raw),
      drive,
      lean: spread('lean', DEFAULTS.lean),
      scaleX: spread('scale-x', DEFAULTS.scaleX),
      scaleY: spread('scale-y', DEFAULTS.scaleY),
      lostMotion: lostMotionOf(context, raw, drive),
      repeatability: spread('repeatability', DEFAULTS.repeatability),
      local: localOf(context, raw),
      cutterLeanX: spread('cutter-lean-x', DEFAULTS.cutterLeanX),
      cutterLeanY: spread('cutter-lean-y', DEFAULTS.cutterLeanY),
      aboveTip: aboveTipOf(raw['above-the-tip']),
    },
    homing: spread('homing', DEFAULTS.homing),
    powerOff: spread('power-off', BY_DRIVE[drive].powerOff),
  };
}

type SpreadKey =
  | 'lean'
  | 'scale-x'
  | 'scale-y'
  | 'repeatability'
  | 'homing'
  | 'power-off'
  | 'cutter-lean-x'
  | 'cutter-lean-y';

/** How far an axis goes until its local error is another one, when nobody says it; common practice, no source. */
const LOCAL_OVER_MM = 100;

function localOf(context: Context, raw: RawMachine): Machine['local'] {
  const over = raw['local-error-over'];
  if (over !== undefined && raw['local-error'] === undefined)
    fault(
      context,
      [raw, 'local-error-over'],
      'local-error-over says over what length a local error changes, and there is none',
      'write local-error: ±0.02 as well, or take it out',
    );
  return {
    spread: spreadAt(context, [raw, 'local-error'], raw['local-error'], DEFAULTS.localError),
    overMm: over === undefined ? LOCAL_OVER_MM : mm(over),
  };
}

function travelOf(context: Context, raw: RawMachine): Machine['travelMm'] {
  if (raw.travel !== undefined) {
    const [x, y, z] = raw.travel;
    return { x: mm(x), y: mm(y), z: mm(z) };
  }
  if (!context.touched.has(raw))
    fault(
      context,
      startPlace(context, raw),
      'machine: travel is missing',
      'write travel: [600, 400, 90] in the shop file',
    );
  // The job is refused; without a travel nothing is found too big for it.
  return { x: Infinity, y: Infinity, z: Infinity };
}

/**
 * A place is off by plus or minus half the play: `0.06` is the play, both ways together, and `±0.03`
 * says the same.
 */
function lostMotionOf(context: Context, raw: RawMachine, drive: 'screw' | 'belt'): Spread {
  const at = [raw, 'lost-motion'] as const;
  const written: RawSpread | undefined = raw['lost-motion'];
  const plain = typeof written === 'object' ? written.spread : written;
  const recurs = (typeof written === 'object' ? written.recurs : undefined) ?? 'feature';
  if (written !== undefined && plain === undefined)
    fault(context, at, 'lost-motion is one length here', 'write lost-motion: 0.06');
  const text = String(plain ?? BY_DRIVE[drive].lostMotion);
  const signs = plainSigns(text);
  const read = readLength(signs.replace(/^±/, ''));
  const half = read.ok ? read.value.value * (signs.startsWith('±') ? 1 : 0.5) : 0;
  return {
    distribution:
      half === 0 ? { kind: 'exactly', value: 0 } : { kind: 'either', low: -half, high: half },
    recurs,
    origin:
      plain === undefined
        ? { kind: 'assumed', because: `a ${drive} drive; common practice, no source` }
        : statedAt(context, at),
    text,
  };
}

function aboveTipOf(raw: RawAboveTip | undefined): AboveTip {
  const nut = raw?.['collet-nut'];
  const spindle = raw?.spindle;
  const shoe = raw?.['dust-shoe'];
  return {
    colletNut: nut === undefined ? null : { radiusMm: mm(nut.radius), fromMm: mm(nut.from) },
    spindle:
      spindle === undefined ? null : { radiusMm: mm(spindle.radius), fromMm: mm(spindle.from) },
    dustShoe:
      shoe === undefined
        ? null
        : { xMm: mm(shoe.size[0]), yMm: mm(shoe.size[1]), fromMm: mm(shoe.from) },
  };
}

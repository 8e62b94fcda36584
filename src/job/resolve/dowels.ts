import { fitOf } from '../fit/fit.ts';
import { DEFAULTS } from '../defaults.ts';
import type { Clearance, DowelHoles, Spread } from '../job.ts';
import type { Point } from '../../plane/point.ts';
import type { RawDowelFit } from '../schema/raw-job.ts';
import { shifted } from '../text/distribution.ts';
import type { Context } from './context.ts';
import { fault, placeOfKey, statedAt } from './context.ts';
import { mm } from './lengths.ts';
import { sizeAt } from './sized.ts';
import { assumed, gapAt, spreadAt } from './spread.ts';

/** Dowels and their holes; null, with its faults, when how they fit is not known. */
export function dowelHolesOf(
  context: Context,
  raw: RawDowelFit,
  at: readonly Point<'blank'>[],
): DowelHoles | null {
  const clearance = clearanceOf(context, raw);
  const separately = raw.drilled === 'separately';
  if (!separately && raw['drill-error'] !== undefined)
    fault(
      context,
      [raw, 'drill-error'],
      'drill-error is for holes that are drilled separately, and these are drilled with the blank',
      'take it out, or write drilled: separately',
    );
  if (separately && raw.laid !== undefined)
    fault(
      context,
      [raw, 'laid'],
      'laid is for a first placing that nothing seats, and here it is put on the dowels',
      'take it out, or write drilled: with-the-blank',
    );
  if (clearance === null) return null;
  return {
    at,
    diameterMm: mm(raw.diameter),
    clearance,
    drilled: raw.drilled,
    drillError: spreadAt(context, [raw, 'drill-error'], raw['drill-error'], DEFAULTS.drillError),
    takeUp: raw['take-up'] ?? 'anywhere',
    laid: spreadAt(context, [raw, 'laid'], raw.laid, DEFAULTS.laid),
  };
}

function clearanceOf(context: Context, raw: RawDowelFit): Clearance | null {
  const sized = raw.pin !== undefined || raw.hole !== undefined;
  const ways = [
    ...(raw.clearance === undefined ? [] : ['clearance']),
    ...(raw.fit === undefined ? [] : ['fit']),
    ...(sized ? ['pin and hole'] : []),
  ];
  if (ways.length > 1) {
    fault(
      context,
      placeOfKey(context, raw, raw.fit === undefined ? 'clearance' : 'fit'),
      `how the dowels fit is said ${ways.length} times: ${ways.join(', ')}`,
      'write one of them',
    );
    return null;
  }
  if (raw.fit !== undefined) return fitted(context, raw, raw.fit);
  if (raw.bush !== undefined)
    fault(
      context,
      [raw, 'bush'],
      'bush: metal is for a fit such as H7/g6, and there is none',
      'take it out, or write fit: H7/g6',
    );
  if (sized) return measured(context, raw);
  const at = [raw, 'clearance'] as const;
  const row = DEFAULTS.dowelClearance;
  return { kind: 'stated', spread: gapAt(context, at, raw.clearance, row, 'a clearance') };
}

/** A fit as what each diameter is off by: any value between its limits is as likely as another (GUM 4.3.7). */
function fitted(context: Context, raw: RawDowelFit, text: string): Clearance | null {
  if (raw.bush !== 'metal') {
    fault(
      context,
      [raw, 'fit'],
      `${text} is a fit for metal, and a hole drilled in wood has none`,
      'write bush: metal if it is a metal bush, or clearance: 0..0.1',
    );
    return null;
  }
  const fit = fitOf(text, mm(raw.diameter));
  if (!fit.ok) {
    for (const { message, instead } of fit.faults) fault(context, [raw, 'fit'], message, instead);
    return null;
  }
  const origin = statedAt(context, [raw, 'fit']);
  const within = (
    limits: { readonly lowMm: number; readonly highMm: number },
    recurs: Spread['recurs'],
  ): Spread => ({
    distribution: { kind: 'rectangular', low: limits.lowMm, high: limits.highMm },
    recurs,
    origin,
    text: fit.value.text,
  });
  return {
    kind: 'sizes',
    pin: within(fit.value.pin, 'setup'),
    hole: within(fit.value.hole, 'part'),
  };
}

function measured(context: Context, raw: RawDowelFit): Clearance | null {
  const { pin, hole } = raw;
  if (pin === undefined || hole === undefined) {
    const [given, other] =
      pin === undefined ? (['hole', 'pin'] as const) : (['pin', 'hole'] as const);
    fault(
      context,
      [raw, given],
      `the diameter of the ${given} says nothing without that of the ${other}`,
      `write ${other}: ${mm(raw.diameter)} ±0.02 as well, or clearance: 0..0.1`,
    );
    return null;
  }
  const spreads = [
    lessNominal(context, raw, 'pin', pin, 'setup'),
    lessNominal(context, raw, 'hole', hole, 'part'),
  ] as const;
  const [pinSpread, holeSpread] = spreads;
  if (pinSpread === null || holeSpread === null) return null;
  return { kind: 'sizes', pin: pinSpread, hole: holeSpread };
}

/** A measured diameter further than this from the nominal one was measured on something else, or is a slip. */
const LARGEST_OFF_MM = 1;

function lessNominal(
  context: Context,
  raw: RawDowelFit,
  key: 'pin' | 'hole',
  written: NonNullable<RawDowelFit['pin']>,
  recurs: Spread['recurs'],
): Spread | null {
  const size = sizeAt(context, [raw, key], written, recurs);
  if (size === null) return null;
  const offMm = size.nominalMm - mm(raw.diameter);
  if (Math.abs(offMm) > LARGEST_OFF_MM) {
    fault(
      context,
      [raw, key],
      `the ${key} measures ${size.nominalMm} mm, and the diameter is ${mm(raw.diameter)} mm`,
      'write the diameter that was measured, or another nominal diameter',
    );
    return null;
  }
  const exactly: Spread = {
    ...assumed(DEFAULTS.movement),
    recurs,
    origin: statedAt(context, [raw, key]),
    text: '0',
  };
  const spread = size.spread ?? exactly;
  const distribution = shifted(spread.distribution, offMm);
  if (distribution === null) {
    fault(
      context,
      [raw, key],
      `a half-normal spread starts at the diameter itself, so it cannot be that of the ${key}`,
      `write ${key}: ${size.nominalMm} ±0.02`,
    );
    return null;
  }
  return { ...spread, distribution, text: `${size.nominalMm} mm ${spread.text}` };
}

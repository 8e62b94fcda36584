import { DEFAULTS, TIP_FLAT } from '../defaults.ts';
import type { Cutter, Spread } from '../job.ts';
import type { RawCutter } from '../schema/raw-shop.ts';
import { readLength } from '../text/length.ts';
import { said } from '../text/said.ts';
import type { Context } from './context.ts';
import { fault, statedAt } from './context.ts';
import { radians } from './lengths.ts';
import { gapAt } from './spread.ts';

/**
 * The point of a V cutter; null for other kinds. Without an angle it is null too: that is a fault where
 * the cutter is used, not of a shop file in which it only stands.
 */
export function veeOf(context: Context, raw: RawCutter, diameterMm: number): Cutter['vee'] {
  if (raw.kind !== 'vee') {
    for (const key of ['angle', 'tip-flat'] as const)
      if (raw[key] !== undefined)
        fault(
          context,
          [raw, key],
          `${key} is for a vee cutter, and ${raw.name} is a ${raw.kind} one`,
          'take it out, or write kind: vee',
        );
    return null;
  }
  if (raw.angle === undefined) return null;
  const includedRad = radians(raw.angle);
  if (includedRad <= 0 || includedRad >= Math.PI) {
    fault(
      context,
      [raw, 'angle'],
      `angle ${raw.angle} is not the angle of a vee`,
      'write more than 0 deg and less than 180 deg',
    );
    return null;
  }
  const tipFlatMm = tipFlatOf(context, raw);
  const { distribution } = tipFlatMm;
  if (distribution.kind === 'exactly' && distribution.value >= diameterMm)
    fault(
      context,
      [raw, 'tip-flat'],
      `tip-flat ${said(distribution.value)} mm is as wide as ${raw.name}, which is ${said(diameterMm)} mm`,
      'write the width of the flat at its tip, such as 0.1',
    );
  return { includedRad, tipFlatMm };
}

/** A plain length is that length exactly; a spread says how far it is known. */
function tipFlatOf(context: Context, raw: RawCutter): Spread {
  const written = raw['tip-flat'];
  if (typeof written === 'object')
    return gapAt(context, [raw, 'tip-flat'], written, FALLBACK, 'a tip flat');
  const text = String(written ?? TIP_FLAT);
  const plain = readLength(text);
  if (!plain.ok) return gapAt(context, [raw, 'tip-flat'], text, FALLBACK, 'a tip flat');
  return {
    distribution: { kind: 'exactly', value: plain.value.value },
    recurs: 'shop',
    origin:
      written === undefined
        ? { kind: 'assumed', because: FALLBACK.because }
        : statedAt(context, [raw, 'tip-flat']),
    text,
  };
}

/** How a spread that is stated is read, and what stands in for one that is faulty. */
const FALLBACK = { ...DEFAULTS.pushOff, text: '0', recurs: 'shop' } as const;

import { invariant } from '../../num/invariant.ts';
import type { Recurrence, Spread } from '../job.ts';
import type { RawSpread } from '../schema/raw-shop.ts';
import { LENGTH } from '../text/length.ts';
import { readSized } from '../text/sized.ts';
import type { At, Context } from './context.ts';
import { fault, statedAt } from './context.ts';
import { mm } from './lengths.ts';
import { distributionOf } from './spread.ts';

/** A size, mm, and its spread; null when none was written with it. */
export interface KnownSize {
  readonly nominalMm: number;
  readonly spread: Spread | null;
}

/** The size written at a place, short (`280 ±0.4`) or long; null, with its fault, when it has none. */
export function sizeAt(
  context: Context,
  at: At,
  raw: RawSpread,
  recurs: Recurrence,
): KnownSize | null {
  const origin = statedAt(context, at);
  if (typeof raw !== 'object') {
    const read = readSized(String(raw));
    invariant(read.ok, `the schema let ${raw} through as a size`);
    const { nominalMm, spread, spreadText } = read.value;
    if (spread === null) return { nominalMm, spread: null };
    return {
      nominalMm,
      spread: { distribution: spread.distribution, recurs, origin, text: spreadText },
    };
  }
  if (raw.nominal === undefined) {
    if (!context.touched.has(raw))
      fault(context, at, 'the size is missing', 'write {nominal: 280, spread: ±0.4}');
    return null;
  }
  const nominalMm = mm(raw.nominal);
  const ownRecurs = raw.recurs ?? recurs;
  const bare = raw.spread === undefined && raw.readings === undefined && raw.gauge === undefined;
  if (bare) return { nominalMm, spread: null };
  const read = distributionOf(context, at, raw, LENGTH, ownRecurs);
  return { nominalMm, spread: read === null ? null : { ...read, recurs: ownRecurs, origin } };
}

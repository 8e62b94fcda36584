import { invariant } from '../../num/invariant.ts';
import type { Distribution } from '../../num/distribution.ts';
import type { Default } from '../defaults.ts';
import type { Recurrence, Spread } from '../job.ts';
import { suggestion } from '../schema/closest.ts';
import type { RawLongSpread, RawSpread } from '../schema/raw-shop.ts';
import { lowestOf, scaled } from '../text/distribution.ts';
import type { Quantity } from '../text/quantity.ts';
import { spreadOfReadings } from '../text/readings.ts';
import { readSpread } from '../text/spread.ts';
import type { At, Context } from './context.ts';
import { fault, note, statedAt } from './context.ts';

/** The spread that is written at a place, or the default when nothing is. */
export function spreadAt(
  context: Context,
  at: At,
  raw: RawSpread | undefined,
  fallback: Default,
): Spread {
  if (raw === undefined) return assumed(fallback);
  const long: RawLongSpread = typeof raw === 'object' ? raw : { spread: raw };
  const recurs = long.recurs ?? fallback.recurs;
  const read = distributionOf(context, at, long, fallback.quantity, recurs);
  return read === null ? assumed(fallback) : { ...read, recurs, origin: statedAt(context, at) };
}

/** The same for what cannot be below 0: `what` is its name in the message. */
export function gapAt(
  context: Context,
  at: At,
  raw: RawSpread | undefined,
  fallback: Default,
  what = 'a gap',
): Spread {
  const spread = spreadAt(context, at, raw, fallback);
  if (lowestOf(spread.distribution) >= 0) return spread;
  const figure = /[\d.]+(?:\s*(?:mm|in|"|thou|µm))?/.exec(spread.text)?.[0] ?? '0.03';
  fault(
    context,
    at,
    `${String(at[1])} ${spread.text} goes below 0, and ${what} cannot`,
    `write 0..${figure} or half-normal ${figure}`,
  );
  return assumed(fallback);
}

/** A row of the table of defaults as a spread. */
export function assumed(row: Default): Spread {
  const read = readSpread(row.quantity, row.text);
  invariant(read.ok, `the default ${row.text} cannot be read`);
  return {
    distribution: read.value.distribution,
    recurs: row.recurs,
    origin: { kind: 'assumed', because: row.because },
    text: row.text,
  };
}

/** What a long or short form says; null (and its fault) when it says nothing or two things. */
export function distributionOf(
  context: Context,
  at: At,
  long: RawLongSpread,
  quantity: Quantity,
  recurs: Recurrence,
): { readonly distribution: Distribution; readonly text: string } | null {
  const given = [long.spread, long.readings, long.gauge].filter((form) => form !== undefined);
  const key = String(at[1]);
  if (given.length !== 1) {
    if (given.length > 0 || !context.touched.has(long))
      fault(
        context,
        at,
        `${key} has ${given.length === 0 ? 'none' : given.length} of spread, readings and gauge`,
        'write one of them, as in {spread: ±0.3, recurs: part}',
      );
    return null;
  }
  if (long.gauge !== undefined) return gaugeSpread(context, at, long.gauge, quantity);
  if (long.readings !== undefined) {
    const read = spreadOfReadings(quantity, long.readings.map(String), recurs);
    if (!read.ok) for (const f of read.faults) fault(context, at, `${key} ${f.message}`, f.instead);
    else if (read.value.caution !== null) note(context, at, `${key}: ${read.value.caution}`);
    return read.ok ? read.value : null;
  }
  const text = String(long.spread);
  const read = readSpread(quantity, text);
  invariant(read.ok, `the schema let ${text} through as a spread`);
  return { distribution: read.value.distribution, text };
}

function gaugeSpread(context: Context, at: At, name: string, quantity: Quantity) {
  const written = Object.hasOwn(context.gauges, name) ? context.gauges[name] : undefined;
  if (written === undefined) {
    fault(
      context,
      at,
      `the gauge ${name} is not in the shop file`,
      suggestion(name, Object.keys(context.gauges), 'gauge there'),
    );
    return null;
  }
  const text = quantity.read(String(written)).ok ? `±${written}` : String(written);
  const read = readSpread(quantity, text);
  if (read.ok) return { distribution: read.value.distribution, text: `gauge ${name}, ${text}` };
  fault(
    context,
    at,
    `the gauge ${name} is good to ${text}, which is not for ${quantity.what}`,
    `write a spread of ${quantity.what}`,
  );
  return null;
}

/** The same spread times `by`. */
export const times = (spread: Spread, by: number): Spread => ({
  ...spread,
  distribution: scaled(spread.distribution, by),
});

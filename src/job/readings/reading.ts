import { hypotenuse } from '../../num/elementary.ts';
import { sdOf } from '../../num/spread-of.ts';
import type { At, Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { mm } from '../resolve/lengths.ts';
import { suggestion } from '../schema/closest.ts';
import { LENGTH } from '../text/length.ts';
import { readSpread } from '../text/spread.ts';
import type { RawReading } from './raw-readings.ts';
import { GAUGES, isGaugeKind } from './standard-gauges.ts';

/** A figure that was read, mm: the mean of its repeats, and the sd of that mean by what the gauge and the repeats allow. */
export interface Read {
  readonly value: number;
  readonly sd: number;
  readonly dof: number;
}

/** How well one reading of a length is known, as an sd in mm; by a standard's limits or by the shop's own word. */
export type GaugeSd = (lengthMm: number) => number;

/** What is taken when no gauge is named: a caliper (common practice, no source). */
export const UNNAMED_SD = 0.03 / Math.sqrt(3);

/** The gauge of that name: first of the shop, then of the standards. */
export function gaugeSdOf(context: Context, at: At, name: string | undefined): GaugeSd {
  if (name === undefined) return () => UNNAMED_SD;
  const sd = knownGauge(context.gauges, name);
  if (sd !== null) return sd;
  const written = Object.hasOwn(context.gauges, name) ? context.gauges[name] : undefined;
  const text = String(written ?? '');
  const known = gaugeNames(context.gauges);
  fault(
    context,
    at,
    written === undefined
      ? `the gauge ${name} is neither in the shop file nor a standard one`
      : `the gauge ${name} is good to ${text}, which is not for lengths`,
    suggestion(name, known, 'gauge there'),
  );
  return () => UNNAMED_SD;
}

/** How good the gauge of a name is; null when neither the shop nor a standard knows it for lengths. */
export function knownGauge(gauges: Context['gauges'], name: string): GaugeSd | null {
  const written = Object.hasOwn(gauges, name) ? gauges[name] : undefined;
  // Anywhere within the limits is as likely (rectangular, GUM 4.3.7).
  if (written === undefined)
    return isGaugeKind(name) ? (lengthMm) => GAUGES[name](Math.abs(lengthMm)) / Math.sqrt(3) : null;
  const text = String(written);
  const read = readSpread(LENGTH, LENGTH.read(text).ok ? `±${text}` : text);
  if (!read.ok) return null;
  const sd = sdOf(read.value.distribution);
  return () => sd;
}

export const gaugeNames = (gauges: Context['gauges']): readonly string[] => [
  ...Object.keys(gauges),
  ...Object.keys(GAUGES),
];

/** Whether a figure was read at all. */
export const isRead = (raw: unknown): boolean =>
  raw !== undefined && !(Array.isArray(raw) && raw.length === 0);

/**
 * Repeats tell how the reading scatters, not how far the gauge itself is off: the gauge's sd is whole in
 * the mean, the scatter is divided by the root of their number.
 */
export function readOf(raw: RawReading, gauge: GaugeSd): Read {
  const values = (Array.isArray(raw) ? raw : [raw]).map((one) => mm(one as string | number));
  const n = values.length;
  const value = values.reduce((sum, one) => sum + one, 0) / n;
  const own = gauge(value);
  if (n < 2) return { value, sd: own, dof: Infinity };
  const square = values.reduce((sum, one) => sum + (one - value) ** 2, 0) / (n - 1);
  const scatter = Math.sqrt(square / n);
  const sd = hypotenuse(own, scatter);
  // Welch-Satterthwaite, the gauge's part being known (JCGM 100:2008, G.4.1).
  return { value, sd, dof: scatter === 0 ? Infinity : (n - 1) * (sd / scatter) ** 4 };
}

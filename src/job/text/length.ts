import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import type { Ratio } from './number.ts';
import { readRatio, withoutComma } from './number.ts';
import type { Measured, Quantity } from './quantity.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

/**
 * Millimetres in each unit that is read, as a fraction of whole numbers, so that 3/8" is 9.525 to the last bit.
 * Source: the inch is 25.4 mm exactly (international yard and pound agreement, 1959).
 */
const MM_IN: ReadonlyMap<string, Ratio> = new Map([
  ['mm', { over: 1, under: 1 }],
  ['cm', { over: 10, under: 1 }],
  ['m', { over: 1000, under: 1 }],
  // The micro sign and the Greek letter look alike; keyboards have one or the other.
  ...['\u00b5m', '\u03bcm', 'um'].map((unit) => [unit, { over: 1, under: 1000 }] as const),
  ...['in', 'inch', 'inches', '"', '″'].map((unit) => [unit, { over: 127, under: 5 }] as const),
  ['thou', { over: 127, under: 5000 }],
]);
const UNITS_IN_WORDS = 'mm, cm, m, µm, in, " or thou';
/** Nothing on a small router is longer; a larger figure is a slip of the finger. */
const LONGEST_MM = 10_000;
const PARTS = /^(.*?)\s*([^\d\s./+-][^\d\s/]*)?$/;

/** mm; a bare number is in mm whatever the shop's units are. */
export function readLength(text: string): Result<Measured, TextFault> {
  const trimmed = text.trim();
  const dotted = withoutComma(trimmed);
  if (dotted !== null) return textFault(`${trimmed} has a comma`, `write ${dotted}`);
  const parts = PARTS.exec(trimmed);
  const figure = readRatio(parts?.[1] ?? trimmed);
  const unit = parts?.[2] ?? null;
  if (figure === null) return notALength(trimmed);
  const mmInUnit = MM_IN.get(unit ?? 'mm');
  if (mmInUnit === undefined)
    return textFault(
      `${trimmed} has the unit ${unit ?? ''}, which is not known`,
      `write ${UNITS_IN_WORDS}`,
    );
  const value = (figure.over * mmInUnit.over) / (figure.under * mmInUnit.under);
  if (Math.abs(value) > LONGEST_MM)
    return textFault(
      `${trimmed} is longer than anything here can be`,
      `write at most ${LONGEST_MM} mm`,
    );
  return ok({ value, unit });
}

const notALength = (text: string): Result<never, TextFault> =>
  textFault(
    `${text === '' ? 'nothing' : text} is not a length`,
    'write a length such as 12, 6.35 mm, 1/4 in or 3/8"',
  );

export const LENGTH: Quantity = {
  what: 'a length',
  examples: ['12', '6.35 mm', '1/4 in', '1 1/2 in', '3/8"', '25 thou', '5 µm'],
  read: readLength,
  sharedTail: () => null,
  largestSpread: { value: 100, text: '100 mm' },
};

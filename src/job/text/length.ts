import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { readNumber, withoutComma } from './number.ts';
import type { Measured, Quantity } from './quantity.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

/** Millimetres in each unit that is read. Source: the inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
const MM_IN: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  µm: 0.001,
  μm: 0.001,
  um: 0.001,
  in: 25.4,
  inch: 25.4,
  inches: 25.4,
  '"': 25.4,
  '″': 25.4,
  thou: 0.0254,
};
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
  const figure = readNumber(parts?.[1] ?? trimmed);
  const unit = parts?.[2] ?? null;
  if (figure === null) return notALength(trimmed);
  const mmInUnit = unit === null ? 1 : MM_IN[unit];
  if (mmInUnit === undefined || (unit !== null && !Object.hasOwn(MM_IN, unit)))
    return textFault(
      `${trimmed} has the unit ${unit ?? ''}, which is not known`,
      `write ${UNITS_IN_WORDS}`,
    );
  const value = figure * mmInUnit;
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

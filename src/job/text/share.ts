import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { readNumber } from './number.ts';
import type { Measured, Quantity } from './quantity.ts';
import { readSlope } from './slope.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

const PERCENT = /^(.*?)\s*%$/;

/** A chance, 0..1, from `99 %`. */
export function readChance(text: string): Result<Measured, TextFault> {
  const trimmed = text.trim();
  const figure = readNumber(PERCENT.exec(trimmed)?.[1] ?? '');
  if (figure === null)
    return textFault(`${trimmed} is not a percentage`, 'write a percentage such as 99 %');
  if (figure < 0 || figure > 100)
    return textFault(`${trimmed} is not a chance`, 'write 0 % to 100 %');
  return ok({ value: figure / 100, unit: '%' });
}

/** A strain: a pure number `0.001`, `0.1 %`, or `0.3 per 200`. */
export function readStrain(text: string): Result<Measured, TextFault> {
  const trimmed = text.trim();
  const bare = readNumber(trimmed);
  if (bare !== null) return ok({ value: bare, unit: null });
  const percent = readNumber(PERCENT.exec(trimmed)?.[1] ?? '');
  if (percent !== null) return ok({ value: percent / 100, unit: '%' });
  if (/\sper\s/.test(trimmed)) return readSlope(trimmed);
  return textFault(`${trimmed} is not a strain`, 'write 0.001, 0.1 % or 0.3 per 200');
}

export const STRAIN: Quantity = {
  what: 'a strain',
  examples: ['0.001', '0.1 %', '0.3 per 200'],
  read: readStrain,
  sharedTail: (text) => /\s(per\s.+|%)$/.exec(text)?.[0] ?? null,
  largestSpread: { value: 0.2, text: '20 %' },
};

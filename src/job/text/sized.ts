import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { readLength } from './length.ts';
import type { ReadSpread } from './spread.ts';
import { plainSigns, readSpread } from './spread.ts';
import { LENGTH } from './length.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

/** A size in mm and how far it may be off; `spread` is null when only the size was written. */
export interface Sized {
  readonly nominalMm: number;
  readonly spread: ReadSpread | null;
  readonly spreadText: string;
}

const SIZE_THEN_SPREAD = /^(.*?)\s*(±.*|half-normal\s.*|arcsine\s.*)$/;
const SIZE_THEN_RANGE = /^(.*?\S)\s+([-\d]\S*(?:\s*(?:mm|in|"))?\s*\.\..*)$/;

/** `280 ±0.4`, `11 in ±1/64 in`, `280.4 -0.8..0`, `280`: a size above 0 with the spread that follows it. */
export function readSized(written: string): Result<Sized, TextFault> {
  const text = plainSigns(written);
  const parts = SIZE_THEN_SPREAD.exec(text) ?? SIZE_THEN_RANGE.exec(text);
  const nominal = readLength(parts?.[1] ?? text);
  if (!nominal.ok) return nominal;
  if (nominal.value.value <= 0)
    return textFault(`${text} is not above 0`, 'write a size such as 280 ±0.4');
  if (parts === null) return ok({ nominalMm: nominal.value.value, spread: null, spreadText: '' });
  const [, nominalText = '', spreadText = ''] = parts;
  const spread = readSpread(LENGTH, spreadText);
  if (!spread.ok) return spread;
  if (!spread.value.isZero && (spread.value.unit === null) !== (nominal.value.unit === null))
    return oneSided(text, nominalText, nominal.value.unit, spreadText, spread.value.unit);
  return ok({ nominalMm: nominal.value.value, spread: spread.value, spreadText });
}

function oneSided(
  text: string,
  nominal: string,
  nominalUnit: string | null,
  spread: string,
  spreadUnit: string | null,
): Result<never, TextFault> {
  const written = nominalUnit ?? spreadUnit ?? 'mm';
  const both = (unit: string): string => {
    const gap = unit === '"' ? '' : ' ';
    return nominalUnit === null
      ? `${nominal}${gap}${unit} ${spread}`
      : `${nominal} ${spread}${gap}${unit}`;
  };
  const ways = [...new Set([both(written), both('mm')])].join(' or ');
  return textFault(`${text} has a unit on one side only`, `write ${ways}`);
}

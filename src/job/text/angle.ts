import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { readNumber } from './number.ts';
import type { Measured, Quantity } from './quantity.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

const DEGREES = /^(.*?)\s*(?:deg|degrees?|°)$/;

/** Radians, from degrees; within a full turn either way. */
export function readAngle(text: string): Result<Measured, TextFault> {
  const trimmed = text.trim();
  if (readNumber(trimmed) === 0) return ok({ value: 0, unit: null });
  const figure = readNumber(DEGREES.exec(trimmed)?.[1] ?? '');
  if (figure === null)
    return textFault(`${trimmed} is not an angle`, 'write an angle such as 30 deg');
  if (Math.abs(figure) > 360)
    return textFault(`${trimmed} is more than a full turn`, 'write at most 360 deg');
  return ok({ value: (figure * Math.PI) / 180, unit: 'deg' });
}

export const ANGLE: Quantity = {
  what: 'an angle',
  examples: ['30 deg', '-12.5 deg'],
  read: readAngle,
  sharedTail: () => null,
  largestSpread: { value: Math.PI / 4, text: '45 deg' },
};

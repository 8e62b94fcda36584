import { tangentOf } from '../../num/elementary.ts';
import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { readAngle } from './angle.ts';
import { readLength } from './length.ts';
import { readNumber } from './number.ts';
import type { Measured, Quantity } from './quantity.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

const PER = /^(.*\S)\s+per\s+(.*\S)$/;
const TAIL = /\s(per\s.+|deg(?:rees?)?)$|(°)$/;

/** A tangent: `0.3 per 200`, or an angle `0.4 deg`. A bare number says nothing but 0. */
export function readSlope(text: string): Result<Measured, TextFault> {
  const trimmed = text.trim();
  const per = PER.exec(trimmed);
  if (per !== null) return riseOverRun(trimmed, per[1]!, per[2]!);
  const bare = readNumber(trimmed);
  if (bare === 0) return ok({ value: 0, unit: null });
  if (bare !== null)
    return textFault(
      `${trimmed} does not say over which length it leans`,
      `write ${trimmed} per 200, or ${trimmed} deg`,
    );
  const angle = readAngle(trimmed);
  if (angle.ok && Math.abs(angle.value.value) < Math.PI / 2)
    return ok({ value: tangentOf(angle.value.value), unit: 'deg' });
  return textFault(
    `${trimmed} is not a slope`,
    'write a slope such as 0.3 per 200, or an angle such as 0.4 deg',
  );
}

function riseOverRun(text: string, rise: string, run: string): Result<Measured, TextFault> {
  const riseMm = readLength(rise);
  const runMm = readLength(run);
  if (!riseMm.ok) return riseMm;
  if (!runMm.ok) return runMm;
  if ((riseMm.value.unit === null) !== (runMm.value.unit === null) && riseMm.value.value !== 0)
    return textFault(
      `${text} has a unit on one side only`,
      'write both units, as in 1/64 in per 8 in, or none for mm',
    );
  if (runMm.value.value <= 0)
    return textFault(`${text} leans over a length of ${run}`, 'write a length above 0 after per');
  return ok({ value: riseMm.value.value / runMm.value.value, unit: 'per' });
}

export const SLOPE: Quantity = {
  what: 'a slope',
  examples: ['0.3 per 200', '0.4 deg', '1/64 in per 8 in'],
  read: readSlope,
  sharedTail: (text) => TAIL.exec(text)?.[0] ?? null,
  largestSpread: { value: 1, text: '45 deg' },
};

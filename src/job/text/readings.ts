import type { Distribution } from '../../num/distribution.ts';
import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import type { Recurrence } from '../job.ts';
import type { Quantity } from './quantity.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

export interface ReadReadings {
  readonly distribution: Distribution;
  readonly text: string;
  /** What the person should know about so few readings; null when there is nothing to say. */
  readonly caution: string | null;
}

/**
 * What n readings of an error (measured minus wanted) say. One fixed thing of the shop is known by
 * their mean: scaled t with s/sqrt(n). Anything that is new each time scatters about it:
 * s sqrt(1 + 1/n). Both with n - 1 degrees of freedom.
 * Source: JCGM 101:2008, 6.4.9.
 */
export function spreadOfReadings(
  quantity: Quantity,
  written: readonly string[],
  recurs: Recurrence,
): Result<ReadReadings, TextFault> {
  const values: number[] = [];
  for (const reading of written) {
    const read = quantity.read(reading);
    if (!read.ok) return read;
    if (Math.abs(read.value.value) > quantity.largestSpread.value)
      return textFault(
        `reading ${reading} is more than any error here can be`,
        'write errors: measured minus wanted',
      );
    values.push(read.value.value);
  }
  const n = values.length;
  if (n < 2)
    return textFault(
      `has ${n === 0 ? 'no reading' : 'one reading, which says nothing about the spread'}`,
      'write at least 2, better 5',
    );
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const s = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  const scale = recurs === 'shop' ? s / Math.sqrt(n) : s * Math.sqrt(1 + 1 / n);
  const text = `readings ${written.join(', ')}`;
  if (s === 0)
    return ok({
      distribution: { kind: 'exactly', value: mean },
      text,
      caution: 'all readings are the same, so nothing is known about the spread; none is assumed',
    });
  return ok({
    distribution: { kind: 'scaled-t', mean, scale, dof: n - 1 },
    text,
    caution: CAUTIONS[n] ?? null,
  });
}

const CAUTIONS: Readonly<Record<number, string>> = {
  2: 'two readings have neither a mean nor a standard deviation to predict with; take 5',
  3: 'three readings have no standard deviation to predict with; take 5',
};

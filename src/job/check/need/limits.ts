import type { Limits } from '../../job.ts';
import type { Context } from '../../resolve/context.ts';
import { fault } from '../../resolve/context.ts';
import type { RawNeed } from '../../schema/raw-job.ts';
import { said } from '../../text/said.ts';

/** Far above what rounding does to a nominal, far below what anybody measures, mm. */
export const ROUNDING_MM = 1e-9;

/** Tells when the nominal itself is out of limits; the smallest is held to the lower, the largest to the upper. */
export function checkNominal(
  context: Context,
  { name, limits }: { readonly name: string; readonly limits: Limits },
  raw: RawNeed,
  [smallestMm, largestMm]: readonly [number, number],
): void {
  const out = (key: 'at-least' | 'from' | 'up-to', words: string, nominalMm: number): void => {
    fault(
      context,
      [raw, key],
      `${name}: the drawing itself is out: nominal ${said(nominalMm)} mm, ${words} mm`,
      'change the features, or the limit',
    );
  };
  const { lowMm, highMm } = limits;
  if (lowMm !== null && smallestMm < lowMm - ROUNDING_MM)
    out(raw.from === undefined ? 'at-least' : 'from', `at least ${said(lowMm)}`, smallestMm);
  if (highMm !== null && largestMm > highMm + ROUNDING_MM)
    out('up-to', `at most ${said(highMm)}`, largestMm);
}

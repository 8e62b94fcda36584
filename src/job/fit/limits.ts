import type { Letter } from './table.ts';
import { UP_TO_MM, WIDTH_UM } from './table.ts';

/** A least and a greatest length, mm. */
export interface Limits {
  readonly lowMm: number;
  readonly highMm: number;
}

/** Which range of the table a diameter is in; null when it is in none. */
export function rangeOf(diameterMm: number): number | null {
  if (!(diameterMm > 0)) return null;
  const range = UP_TO_MM.findIndex((upToMm) => diameterMm <= upToMm);
  return range < 0 ? null : range;
}

/** How far the limits of a tolerance such as H7 lie from the nominal diameter, in whole micrometres. */
export function limitsUm(letter: Letter, grade: number, range: number): readonly [number, number] {
  const width = WIDTH_UM[grade]![range]!;
  const fixed = letter.deviationUm[range]! + raisedUm(letter, grade, range);
  return letter.fixes === 'lower' ? [fixed, fixed + width] : [fixed - width, fixed];
}

const raisedUm = (letter: Letter, grade: number, range: number): number =>
  letter.isRaised && range > 0 ? WIDTH_UM[grade]![range]! - WIDTH_UM[grade - 1]![range]! : 0;

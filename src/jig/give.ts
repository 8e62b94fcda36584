import { stopNumbers } from './numbers.ts';

/**
 * How far an arm yields where it is pushed, mm: a beam on its nearest screws, or, beyond the last, a
 * cantilever from it. Friction on the bed is left out, so the truth is rather less.
 * Source: elementary beam theory, P L^3 / 3 E I and P a^2 b^2 / 3 E I (a + b), I = h w^3 / 12.
 */
export function giveMm(
  pushedAtMm: number,
  screwsAtMm: readonly number[],
  section: { readonly widthMm: number; readonly heightMm: number },
): number {
  const { pushN, stiffnessNPerMm2 } = stopNumbers;
  const bending = (3 * stiffnessNPerMm2 * section.heightMm * section.widthMm ** 3) / 12;
  const below = screwsAtMm.map((at) => pushedAtMm - at).filter((mm) => mm >= 0);
  const above = screwsAtMm.map((at) => at - pushedAtMm).filter((mm) => mm >= 0);
  const [a, b] = [least(below), least(above)];
  if (!Number.isFinite(a) && !Number.isFinite(b)) return Infinity;
  if (!Number.isFinite(a) || !Number.isFinite(b)) return (pushN * Math.min(a, b) ** 3) / bending;
  return a + b === 0 ? 0 : (pushN * a ** 2 * b ** 2) / (bending * (a + b));
}

const least = (all: readonly number[]): number => all.reduce((l, x) => Math.min(l, x), Infinity);

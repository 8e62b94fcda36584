import type { Distribution } from '../num/distribution.ts';
import { unreachable } from '../num/invariant.ts';
import type { Units } from '../job/job.ts';

/** Source: international yard and pound agreement, 1959. */
export const MM_PER_INCH = 25.4;

/** A size somebody set, with its unit: `280 mm`, `11.024 in`; no more digits than it has. */
export function lengthText(mm: number, units: Units): string {
  const value = units === 'inch' ? mm / MM_PER_INCH : mm;
  // Below a tenth, three figures that count: 0.0787 in, 0.05 mm.
  const digits =
    Math.abs(value) < 0.1
      ? -Math.floor(Math.log10(Math.abs(value) || 1)) + 2
      : units === 'inch'
        ? 3
        : 2;
  return `${trueMinus(String(Number(value.toFixed(digits))))} ${unitText(units)}`;
}

/** A gap to keep clear, rounded down to what a rule shows: `34.8 mm`, `1.37 in`. */
export function gapText(mm: number, units: Units): string {
  const [value, steps] = units === 'inch' ? [mm / MM_PER_INCH, 100] : [mm, 10];
  // 1e-9 of a step keeps 14 from becoming 13.9.
  return `${trueMinus(String(Math.floor(value * steps + 1e-9) / steps))} ${unitText(units)}`;
}

/** Something small that was worked out, with its unit: `0.083 mm`, `0.21 mm`, `0.0083 in`. */
export function deviationText(mm: number, units: Units): string {
  return `${deviationNumber(mm, units, mm)} ${unitText(units)}`;
}

/** `0.02 to 0.19 mm`: both ends with the same digits. */
export function intervalText(ends: readonly [number, number], units: Units): string {
  const widest = Math.max(...ends.map(Math.abs));
  const [low, high] = ends.map((end) => deviationNumber(end, units, widest));
  return `${low!} to ${high!} ${unitText(units)}`;
}

/** Chance of being good, rounded down so that it never promises more: `98.9 %`, `over 99.9 %`. */
export function chanceText(share: number): string {
  if (share >= 0.9995) return 'over 99.9 %';
  if (share < 0.001) return 'under 0.1 %';
  // The half ulp keeps 0.996 at 99.6; 1e-9 is far below what is printed.
  return `${(Math.floor(share * 1000 + 1e-9) / 10).toFixed(1)} %`;
}

/** Part of a whole, which an estimate may overshoot: `62 %`, `under 1 %`, never above `100 %`. */
export function shareText(share: number): string {
  if (share > 0 && share < 0.005) return 'under 1 %';
  return `${trueMinus((Math.min(share, 1) * 100).toFixed(0))} %`;
}

/** A level somebody asked for, with the digits it has: `99 %`, `99.5 %`. */
export function levelText(share: number): string {
  return `${Number((share * 100).toFixed(4))} %`;
}

/** How far a length may be off: `±0.4 mm`, `0 mm to 0.2 mm`, `±0.1 mm (95 in 100)`. */
export function spreadText(spread: Distribution, units: Units): string {
  const length = (mm: number): string => lengthText(mm, units);
  switch (spread.kind) {
    case 'exactly':
      return spread.value === 0 ? 'exactly' : `off by ${length(spread.value)}`;
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either':
      return spread.low === -spread.high
        ? `±${length(spread.high)}`
        : `${length(spread.low)} to ${length(spread.high)}`;
    case 'normal':
      return `±${length(1.96 * spread.sd)} (95 in 100)`;
    case 'half-normal':
      return `0 to ${length(1.96 * spread.sigma)} (95 in 100)`;
    case 'scaled-t':
      return `about ±${length(2 * spread.scale)}`;
    default:
      return unreachable(spread);
  }
}

/** A count with its thousands apart: `100 000` (thin spaces). */
export function countText(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, '\u2009');
}

export function unitText(units: Units): 'mm' | 'in' {
  return units === 'inch' ? 'in' : 'mm';
}

/** U+2212 in place of the hyphen, and no minus before a nought. */
export function trueMinus(digits: string): string {
  return Number(digits) === 0 ? digits.replace('-', '') : digits.replace('-', '\u2212');
}

function deviationNumber(mm: number, units: Units, widestMm: number): string {
  if (units === 'inch') return trueMinus((mm / MM_PER_INCH).toFixed(4));
  return trueMinus(mm.toFixed(Math.abs(widestMm) < 0.1 ? 3 : 2));
}

import type { Units } from '../job/job.ts';
import { lengthText } from './words.ts';

/**
 * How far something may be off, as it was written, with a unit at each length: `±0.4` is `±0.4 mm`.
 * What says another unit, an angle or a share of the size stays as it was written.
 */
export function writtenSpread(text: string, units: Units): string {
  const [, body, sure] = /^(.*?)(\s\d+\s*%)?$/s.exec(text)!;
  const mm = body!.replace(/(\d)\s*mm\b/g, '$1');
  if (OTHER_UNIT.test(mm)) return text;
  const figures = mm.replace(/\d+(?:\.\d+)?/g, (figure) => lengthText(Number(figure), units));
  return `${figures}${sure ?? ''}`;
}

/** Inches, thous, metres, micrometres, angles, shares. */
const OTHER_UNIT = /%|°|["″]|\d\s*(?:in|inch|inches|thou|deg|degrees?|cm|m|[µμu]m)\b/;

import type { Units } from '../job/job.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { Spot } from './svg.ts';
import { INK, dot, textAt } from './svg.ts';
import { lengthText } from './words.ts';

/** A bar of a round length, at most `longestMm` on paper; its text stands above it. */
export function scaleBar(
  at: Spot,
  anchor: 'start' | 'end',
  paperPerMm: number,
  longestMm: number,
  units: Units,
): Html {
  const unitMm = units === 'inch' ? 25.4 : 1;
  const round = roundBelow(longestMm / paperPerMm / unitMm);
  const length = round * unitMm * paperPerMm;
  const x = anchor === 'start' ? at.x : at.x - length;
  return markup`<rect x="${dot(x)}" y="${dot(at.y - 1.4)}" width="${dot(length / 2)}" height="1.4" fill="${INK}"/><rect x="${dot(x)}" y="${dot(at.y - 1.4)}" width="${dot(length)}" height="1.4" fill="none" stroke="${INK}" stroke-width="0.3"/>${textAt({ x: anchor === 'start' ? x : at.x, y: at.y - 2.6 }, lengthText(round * unitMm, units), { sizeMm: 3.5, anchor })}`;
}

/** The largest of 1, 2, 5 times a power of ten that is not above `limit`. */
function roundBelow(limit: number): number {
  const power = 10 ** Math.floor(Math.log10(limit));
  const lead = limit / power;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * power;
}

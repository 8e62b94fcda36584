import type { Estimate } from '../advise/estimate.ts';
import type { Why } from '../advise/actions/why.ts';
import type { Hurt } from '../advise/hurts.ts';
import { shareText, trueMinus } from './words.ts';

/** A chance with the digits that its standard error leaves it, rounded down: `97 %`, `99.6 %`, `over 99.9 %`. */
export function percentText({ value, se }: Estimate): string {
  if (value >= 0.9995) return 'over 99.9 %';
  if (value < 0.001) return 'under 0.1 %';
  const isFine = se < 0.002 && (value > 0.98 || value < 0.02);
  const steps = isFine ? 1000 : 100;
  // 1e-9 keeps 0.996 at 99.6.
  return `${((Math.floor(value * steps + 1e-9) / steps) * 100).toFixed(isFine ? 1 : 0)} %`;
}

/** A gain in points, with its standard error: `+14 points (± 0.6)`. */
export function pointsText({ value, se }: Estimate): string {
  const points = 100 * value;
  const places = 100 * se < 0.95 ? 1 : 0;
  const size = trueMinus(points.toFixed(places));
  const told = points > 0 && Number(points.toFixed(places)) > 0 ? `+${size}` : size;
  return `${told} ${Math.abs(Number(points.toFixed(places))) === 1 ? 'point' : 'points'} (± ${(100 * se).toFixed(places === 1 ? 1 : 0)})`;
}

/** The same in a column: `+14`, `−0.6`. */
export function shortPoints({ value, se }: Estimate): string {
  const text = (100 * value).toFixed(100 * se < 0.3 || Math.abs(value) < 0.0095 ? 1 : 0);
  return `${Number(text) > 0 ? '+' : ''}${trueMinus(text)}`;
}

/** What a spread comes from, when it is worth a word: `, most of it the blank's length along X (62 %)`. */
export function hurtWords(hurts: readonly Hurt[]): string {
  const [worst, next] = hurts;
  if (worst === undefined || worst.share < 0.05) return '';
  if (worst.share >= 0.4 || next === undefined)
    return `, most of it ${worst.words} (${shareText(worst.share)})`;
  return `, of it ${worst.words} (${shareText(worst.share)}) and ${next.words} (${shareText(next.share)})`;
}

export const partsWords = (count: number): string => (count === 1 ? 'one part' : `${count} parts`);

/** `The blank's length along X is what hurts: 62 % of its spread.`, or the two or three that do. */
export function hurtsSentence(hurts: readonly Hurt[]): string {
  const told = hurts.filter(({ share }) => share >= 0.1).slice(0, 3);
  const [worst] = told;
  if (worst === undefined) return 'Many small things make its spread, none of them a tenth of it.';
  if (worst.share >= 0.5)
    return `${capital(worst.words)} is what hurts: ${shareText(worst.share)} of its spread.`;
  const list = told.map(({ words, share }) => `${words} (${shareText(share)})`);
  return `What hurts: ${listed(list)} of its spread.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)!}`;

/** What an action takes away: `Then the blank's length along X no longer matters (it makes 62 % of the spread now).` */
export function whySentence({ words, before, after }: Why): string {
  const now = `${shareText(before)} of the spread now`;
  if (after < 0.03) return `Then ${words} no longer matters (${now}).`;
  const times = before / after;
  return times >= 1.5
    ? `Then ${words} counts ${times < 3 ? 'about half' : `a ${ordinal(times)}`} as much (${now}).`
    : `It lessens ${words} (${now}).`;
}

const ordinal = (times: number): string =>
  times < 3.5 ? 'third' : times < 4.5 ? 'quarter' : times < 7 ? 'fifth' : 'tenth';

/** When there is nothing left to gain; nothing when that was not found out. */
export function paysSentence({ paysAbove, text, words }: Why): string {
  if (paysAbove === null || paysAbove === 0 || text === '') return '';
  const share = paysAbove === 0.5 ? 'half' : paysAbove === 0.25 ? 'a quarter' : 'an eighth';
  return `It stops paying once ${words} is ${share} of what it is now (${text}).`;
}

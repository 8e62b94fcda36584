import type { Distribution } from '../../num/distribution.ts';
import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { readNumber } from './number.ts';
import type { Measured, Quantity } from './quantity.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

/** How a deviation is spread, and whether units were written with it. */
export interface ReadSpread {
  readonly distribution: Distribution;
  /** Unit of the first figure; null for bare numbers and for a plain 0, which is the same in any unit. */
  readonly unit: string | null;
  readonly isZero: boolean;
}

/** One sign for the three ways people write it; the minus sign of typesetters is a minus sign. */
export const plainSigns = (text: string): string =>
  text
    .trim()
    .replace(/−/g, '-')
    .replace(/\+\s*\/?\s*-/g, '±');

/**
 * The deviation that a text describes: `±0.4`, `±0.4 triangular`, `±0.2 95%`, `0.05 sd`,
 * `half-normal 0.03`, `0..0.2`, `arcsine ±0.1`, `0`.
 * Source: kinds as in JCGM 101:2008 table 1; limits alone are rectangular by GUM 4.3.7.
 */
export function readSpread(quantity: Quantity, written: string): Result<ReadSpread, TextFault> {
  const text = plainSigns(written);
  if (readNumber(text) === 0) return ok(nothing);
  for (const [pattern, build] of FORMS) {
    const parts = pattern.exec(text);
    if (parts !== null) return build(quantity, text, parts[1] ?? '', parts[2] ?? '');
  }
  if (/^[A-Za-z]+\d+\s*\/\s*[a-z]+\d+$/.test(text))
    return textFault(
      `${text} is a fit, which is for dowels in metal bushes`,
      `write ${spreadExamples(quantity)}`,
    );
  if (quantity.read(text).ok)
    return textFault(
      `${text} is one figure where a spread is wanted`,
      `write ±${text.replace(/^-/, '')}, or 0 to switch it off`,
    );
  return textFault(
    `${text === '' ? 'nothing' : text} is not a spread`,
    `write ${spreadExamples(quantity)}`,
  );
}

const nothing: ReadSpread = {
  distribution: { kind: 'exactly', value: 0 },
  unit: null,
  isZero: true,
};

type Build = (
  quantity: Quantity,
  text: string,
  first: string,
  second: string,
) => Result<ReadSpread, TextFault>;

/** A kind of spread that is one size, read from its text and turned into a distribution. */
const ofSize =
  (distributionOf: (size: number) => Distribution): Build =>
  (quantity, text, first) => {
    const size = readSize(quantity, text, first);
    if (!size.ok) return size;
    if (size.value.value === 0) return ok(nothing);
    return ok({
      distribution: distributionOf(size.value.value),
      unit: size.value.unit,
      isZero: false,
    });
  };

/** Half-width of a 95 % interval in standard deviations. Source: standard normal 97.5 % point. */
const Z_975 = 1.959963984540054;

const FORMS: readonly (readonly [RegExp, Build])[] = [
  [/^arcsine\s*±\s*(.+)$/, ofSize((a) => ({ kind: 'arcsine', low: -a, high: a }))],
  [/^half-normal\s+(.+)$/, ofSize((sigma) => ({ kind: 'half-normal', sigma }))],
  [/^±\s*(.+?)\s+triangular$/, ofSize((a) => ({ kind: 'triangular', low: -a, high: a }))],
  [/^±\s*(.+?)\s+95\s*%$/, ofSize((a) => ({ kind: 'normal', mean: 0, sd: a / Z_975 }))],
  [
    /^±\s*(.+?)\s+(\d+(?:\.\d+)?)\s*%$/,
    (_, text, first, percent) =>
      textFault(`${text} is for ${percent} %, and only 95 % is read`, `write ±${first} 95%`),
  ],
  [/^±\s*(.+)$/, ofSize((a) => ({ kind: 'rectangular', low: -a, high: a }))],
  [/^(.+?)\s*sd$/, ofSize((sd) => ({ kind: 'normal', mean: 0, sd }))],
  [/^(.*?)\s*\.\.\s*(.*)$/, range],
];

/** A figure or fraction without a unit: it shares the one written at the end of a range. */
const BARE = /^-?\s*[\d./\s-]+$/;

function range(
  quantity: Quantity,
  text: string,
  first: string,
  second: string,
): Result<ReadSpread, TextFault> {
  const tail = quantity.sharedTail(second);
  const firstText = tail !== null && BARE.test(first) ? first + tail : first;
  const low = readWithin(quantity, text, firstText);
  const high = readWithin(quantity, text, second);
  if (!low.ok) return low;
  if (!high.ok) return high;
  const [a, b] = [low.value, high.value];
  if (a.value > b.value)
    return textFault(`${text} runs from the larger to the smaller`, `write ${second}..${first}`);
  const isBare = (one: Measured, beside: Measured): boolean =>
    one.unit === null && one.value !== 0 && beside.unit !== null;
  if (isBare(a, b) || isBare(b, a))
    return textFault(`${text} has a unit on one side only`, 'write the unit on both sides');
  const unit = a.value === 0 ? b.unit : a.unit;
  if (a.value === b.value)
    return ok({ distribution: { kind: 'exactly', value: a.value }, unit, isZero: a.value === 0 });
  const distribution: Distribution = { kind: 'rectangular', low: a.value, high: b.value };
  return ok({ distribution, unit, isZero: false });
}

function readSize(quantity: Quantity, text: string, part: string): Result<Measured, TextFault> {
  const size = readWithin(quantity, text, part);
  if (size.ok && size.value.value < 0)
    return textFault(
      `${text} has a negative size`,
      `write ${text.replace(part, part.replace(/^-\s*/, ''))}`,
    );
  return size;
}

function readWithin(quantity: Quantity, text: string, part: string): Result<Measured, TextFault> {
  const read = quantity.read(part);
  if (!read.ok) return read;
  const limit = quantity.largestSpread;
  if (Math.abs(read.value.value) > limit.value)
    return textFault(`${text} is more than any spread here can be`, `write at most ${limit.text}`);
  return read;
}

/** The forms a spread of this quantity takes, for messages and for the schema. */
export function spreadExamples(quantity: Quantity): string {
  const [a] = quantity.examples;
  const one = quantity.what === 'a length' ? '0.2' : (a ?? '0.2');
  return `±${one}, ±${one} triangular, ±${one} 95%, ${one} sd, half-normal ${one}, 0..${one}, arcsine ±${one} or 0`;
}

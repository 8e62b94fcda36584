import { readHumidity, readTemperature } from '../text/air.ts';
import { ANGLE } from '../text/angle.ts';
import { LENGTH } from '../text/length.ts';
import type { Quantity } from '../text/quantity.ts';
import { readChance, STRAIN } from '../text/share.ts';
import { readSized } from '../text/sized.ts';
import { SLOPE } from '../text/slope.ts';
import { readSpread, spreadExamples } from '../text/spread.ts';
import { ok } from '../../num/result.ts';
import { textFault } from '../text/text-fault.ts';
import type { Schema } from './build.ts';
import { either, inUnit, keyed, listOf, number, oneOf, optional, text, written } from './build.ts';
import type { RawLongSpread, RawSpread, Written } from './raw-shop.ts';

const plainly = ({ what, examples, read }: Quantity): Schema<Written> =>
  written(`write ${what} such as ${examples.slice(0, 2).join(' or ')}`, read);

/** A length that may be negative (a place, a bias). */
export const place = (): Schema<Written> => inUnit(plainly(LENGTH), 'mm');
export const angle = (): Schema<Written> => inUnit(plainly(ANGLE), 'deg');
export const chance = (): Schema<Written> =>
  inUnit(written('write a percentage such as 99 %', readChance), '%');

/** A length above 0. */
export const size = (): Schema<Written> =>
  inUnit(
    written('write a length above 0 such as 6 or 1/4 in', (value) => {
      const read = LENGTH.read(value);
      if (!read.ok || read.value.value > 0) return read;
      return textFault(`${value} is not above 0`, 'write a length above 0 such as 6 or 1/4 in');
    }),
    'mm',
  );

/** A length above 0, or, for what turns, a slope above 0. */
export const within = (): Schema<Written> =>
  inUnit(
    written('write a length above 0 such as 0.2, or a slope such as 0.1 per 100', (value) => {
      const read = isSlope(value) ? SLOPE.read(value) : LENGTH.read(value);
      if (!read.ok || read.value.value > 0) return read;
      return textFault(`${value} is not above 0`, 'write a length above 0 such as 6 or 1/4 in');
    }),
    'mm, or a slope',
  );

/** Whether a text is meant as a slope and not as a length. */
export const isSlope = (written: Written): boolean => /\sper\s|deg|°/.test(String(written));

/** Relative humidity from the driest to the dampest. */
export const humidity = (): Schema<Written> =>
  inUnit(
    written('write the driest and the dampest such as 45..60 %', readHumidity),
    '% relative humidity',
  );
export const temperature = (): Schema<Written> =>
  inUnit(written('write a temperature such as 20 C or 68 F', readTemperature), 'C');

/** Hours, above 0; a year at most. */
export const hours = (): Schema<number> =>
  inUnit(
    number('write hours such as 20', (value) =>
      value > 0 && value <= 8760 ? null : 'is not between 0 and 8760',
    ),
    'h',
  );

/** A length that may be 0 and not less. */
export const distance = (): Schema<Written> =>
  inUnit(
    written('write a length such as 6 or 1/4 in', (value) => {
      const read = LENGTH.read(value);
      if (!read.ok || read.value.value >= 0) return read;
      return textFault(`${value} is negative`, 'write 0 or more');
    }),
    'mm',
  );

/** `through`, or a length above 0. */
export const depth = (): Schema<Written> =>
  inUnit(
    written('write a depth such as 6, or through', (value) => {
      if (value.trim() === 'through') return ok(null);
      const read = LENGTH.read(value);
      if (!read.ok || read.value.value > 0) return read;
      return textFault(`${value} is not above 0`, 'write a depth such as 6, or through');
    }),
    'mm',
  );

export const lengthSpread = (): Schema<RawSpread> => inUnit(spreadOf(LENGTH), 'mm');
export const slopeSpread = (): Schema<RawSpread> =>
  inUnit(spreadOf(SLOPE), 'a slope, such as 0.3 per 200 (mm) or 0.4 deg');
export const strainSpread = (): Schema<RawSpread> =>
  inUnit(spreadOf(STRAIN), 'share of the length');

/** A gauge is good to a length or a slope; the ± may be left out. */
export const gauge = (): Schema<Written> =>
  inUnit(
    written('write what the gauge is good to, such as ±0.03 or 0.02 per 100', (value) => {
      const quantity = isSlope(value) ? SLOPE : LENGTH;
      return quantity.read(value).ok ? ok(null) : readSpread(quantity, value);
    }),
    'mm, or a slope',
  );

function spreadOf(quantity: Quantity): Schema<RawSpread> {
  return either(
    written(`write ${spreadExamples(quantity)}`, (value) => readSpread(quantity, value)),
    longForm(quantity),
    `write ${spreadExamples(quantity)}`,
  );
}

/** A length that is known, not below 0, or a spread of it: the flat at a tip. */
export const lengthOrSpread = (): Schema<RawSpread> =>
  inUnit(
    either(
      written('write a length such as 0.1, or a spread such as 0..0.2', (value) => {
        const read = LENGTH.read(value);
        if (!read.ok) return readSpread(LENGTH, value);
        return read.value.value >= 0 ? read : textFault(`${value} is negative`, 'write 0 or more');
      }),
      longForm(LENGTH),
      'write a length such as 0.1, or a spread such as 0..0.2',
    ),
    'mm',
  );

/** Both ways of one plain length: lost motion. */
export const play = (): Schema<RawSpread> =>
  inUnit(
    either(
      written('write a length such as 0.06', readPlay),
      longForm(LENGTH, readPlay),
      'write a length such as 0.06',
    ),
    'mm',
  );

const readPlay: typeof LENGTH.read = (value) => {
  const read = LENGTH.read(value.replace(/^\s*(±|\+-|\+\/-)\s*/, ''));
  if (!read.ok) return read;
  if (read.value.value < 0) return textFault(`${value} is negative`, 'write 0 or more');
  if (read.value.value <= LENGTH.largestSpread.value) return read;
  return textFault(`${value} is more than any spread here can be`, 'write at most 100 mm');
};

/** A size with its spread: `280 ±0.4`, or its long form. */
export const sized = (): Schema<RawSpread> =>
  inUnit(
    either(
      written('write a size such as 280 ±0.4', readSized),
      longForm(LENGTH),
      'write a size such as 280 ±0.4, or {nominal: 280, readings: [0.1, -0.2, 0]}',
    ),
    'mm',
  );

function longForm(
  quantity: Quantity,
  read: (text: string) => ReturnType<typeof readSpread> | ReturnType<typeof readPlay> = (value) =>
    readSpread(quantity, value),
): Schema<RawLongSpread> {
  return keyed<RawLongSpread>({
    nominal: optional(size()),
    spread: optional(written(`write ${spreadExamples(quantity)}`, read)),
    readings: optional(listOf(plainly(quantity))),
    gauge: optional(text()),
    recurs: optional(oneOf('shop', 'power-up', 'setup', 'part', 'placing', 'feature')),
  });
}

/** Turns a minute, above 0. */
export const speed = (): Schema<number> =>
  inUnit(above0('write turns a minute such as 18000'), 'turns a minute');
/** mm a minute, above 0. */
export const feed = (): Schema<number> =>
  inUnit(above0('write mm a minute such as 1800'), 'mm a minute');

function above0(wanted: string): Schema<number> {
  return number(wanted, (value) =>
    value > 0 && value <= 200_000 ? null : `is not between 0 and 200000`,
  );
}

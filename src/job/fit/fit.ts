import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { TextFault } from '../text/text-fault.ts';
import { textFault } from '../text/text-fault.ts';
import type { Limits } from './limits.ts';
import { limitsUm, rangeOf } from './limits.ts';
import type { Letter } from './table.ts';
import { HOLES, SHAFTS, UP_TO_MM } from './table.ts';

/** An ISO 286 fit of a metal pin in a metal bush. */
export interface Fit {
  /** As it is written: `H7/g6`. */
  readonly text: string;
  /** How far the bore lies from the nominal diameter. */
  readonly hole: Limits;
  /** How far the pin lies from the nominal diameter. */
  readonly pin: Limits;
  /** Bore less pin, over the whole diameter; below 0 the pin is the larger and has to be pressed in. */
  readonly clearance: Limits;
}

const LARGEST_MM = UP_TO_MM[UP_TO_MM.length - 1]!;
const TOLERANCE = /^([A-Z]+|[a-z]+)(\d+)$/;
const EXAMPLE = 'H7/g6';

/**
 * What a fit such as `H7/g6` means at a nominal diameter, mm. Faults say what to write instead: an unknown
 * letter, a grade or diameter that is not in the table, capitals and small letters mixed up.
 * Source: ISO 286, see `table.ts`.
 */
export function fitOf(written: string, diameterMm: number): Result<Fit, TextFault> {
  const text = written.trim();
  const [holeText = '', pinText = '', ...more] = text.split('/');
  if (/\s/.test(text)) return textFault(`${text} has a space in it`, insteadOf(text));
  if (more.length > 0) return notAFit(text);
  const halves = halvesOf(text, holeText, pinText);
  if (!halves.ok) return halves;
  const [hole, pin] = halves.value;
  const range = rangeOf(diameterMm);
  if (range === null)
    return textFault(
      `${text} is not tabled for a diameter of ${diameterMm} mm`,
      `write a diameter above 0 and up to ${LARGEST_MM} mm, or the clearance itself such as 0..0.1`,
    );
  const [holeLow, holeHigh] = limitsUm(hole.letter, hole.grade, range);
  const [pinLow, pinHigh] = limitsUm(pin.letter, pin.grade, range);
  return ok({
    text,
    hole: inMm(holeLow, holeHigh),
    pin: inMm(pinLow, pinHigh),
    clearance: inMm(holeLow - pinHigh, holeHigh - pinLow),
  });
}

const inMm = (lowUm: number, highUm: number): Limits => ({
  lowMm: lowUm / 1000,
  highMm: highUm / 1000,
});

interface Half {
  readonly letter: Letter;
  readonly grade: number;
}

function halvesOf(
  text: string,
  holeText: string,
  pinText: string,
): Result<[Half, Half], TextFault> {
  const hole = TOLERANCE.exec(holeText);
  const pin = TOLERANCE.exec(pinText);
  if (hole === null || pin === null) return notAFit(text);
  const [isHoleCapital, isPinCapital] = [hole, pin].map(([, letter]) => isCapital(letter!));
  if (!isHoleCapital && isPinCapital)
    return textFault(
      `${text} has the pin before the hole, which goes by a capital letter`,
      `write ${pinText}/${holeText}`,
    );
  if (!isHoleCapital || isPinCapital)
    return textFault(
      `${text} names two ${isPinCapital === true ? 'holes' : 'pins'}`,
      `write the hole in capitals and the pin in small letters: ${holeText.toUpperCase()}/${pinText.toLowerCase()}`,
    );
  const left = halfOf(text, 'hole', HOLES, hole);
  const right = halfOf(text, 'pin', SHAFTS, pin);
  if (left.ok && right.ok) return ok([left.value, right.value]);
  return faulty([...(left.ok ? [] : left.faults), ...(right.ok ? [] : right.faults)]);
}

const isCapital = (letters: string): boolean => letters === letters.toUpperCase();

function halfOf(
  text: string,
  what: string,
  table: Readonly<Record<string, Letter>>,
  parts: RegExpExecArray,
): Result<Half, TextFault> {
  const [, name = '', figures = ''] = parts;
  const letter = Object.hasOwn(table, name) ? table[name] : undefined;
  if (letter === undefined)
    return textFault(
      `${text} has the ${what} ${name}, which is not in the table`,
      `write one of ${Object.keys(table).join(', ')}`,
    );
  const grade = Number(figures);
  const [from, upTo] = letter.grades;
  if (grade < from || grade > upTo)
    return textFault(
      `${text} has the ${what} ${name}${figures}, and ${name} is tabled for grades ${from} to ${upTo}`,
      `write ${name}${from} to ${name}${upTo}`,
    );
  return ok({ letter, grade });
}

const insteadOf = (text: string): string => {
  const joined = text.replace(/\s+/g, '');
  return `write ${/^[A-Za-z]+\d+\/[A-Za-z]+\d+$/.test(joined) ? joined : EXAMPLE}`;
};

const notAFit = (text: string): Result<never, TextFault> =>
  textFault(
    `${text === '' ? 'nothing' : text} is not a fit`,
    `write the hole, a stroke and the pin, such as ${EXAMPLE}`,
  );

import type { Finding } from './program.ts';

/** One word of a line: a capital letter and its number. */
export interface Word {
  readonly letter: string;
  readonly value: number;
}

export interface Line {
  readonly words: readonly Word[];
  /** The line starts with `/`: a machine may be set to leave it out. */
  readonly mayBeLeftOut: boolean;
  /** What is wrong with how it is written; the words are then not to be carried out. */
  readonly fault: Pick<Finding, 'kind' | 'message'> | null;
}

/**
 * The words of one line. Blanks count for nothing, capitals and small letters are the same; a number
 * has an optional sign, digits and at most one point.
 *
 * Source: rules of RS274/NGC as documented for an open controller descended from NISTIR 6556.
 */
export function wordsOf(text: string): Line {
  const words: Word[] = [];
  let mayBeLeftOut = false;
  let at = 0;
  const faulty = (kind: Finding['kind'], message: string): Line => ({
    words,
    mayBeLeftOut,
    fault: { kind, message },
  });
  while (at < text.length) {
    const code = text.charCodeAt(at);
    if (isBlank(code)) {
      at += 1;
    } else if (code === OPEN) {
      const close = text.indexOf(')', at);
      if (close < 0) return faulty('wrong', 'a remark is opened with ( and not closed');
      const inner = text.indexOf('(', at + 1);
      if (inner >= 0 && inner < close) return faulty('wrong', 'a remark stands in a remark');
      at = close + 1;
    } else if (code === SEMICOLON) {
      break;
    } else if (code === SLASH && words.length === 0 && !mayBeLeftOut) {
      mayBeLeftOut = true;
      at += 1;
    } else if (isLetter(code)) {
      const letter = String.fromCharCode(code & ~32);
      const number = numberAt(text, at + 1);
      if (typeof number === 'string') return faulty('not-understood', `${letter} ${number}`);
      words.push({ letter, value: number.value });
      at = number.end;
    } else {
      return faulty('not-understood', `${shown(text, at)} is not a word of a program`);
    }
  }
  return { words, mayBeLeftOut, fault: null };
}

const OPEN = 40;
const SLASH = 47;
const SEMICOLON = 59;

const isBlank = (code: number): boolean => code === 32 || code === 9 || code === 13;
const isLetter = (code: number): boolean =>
  (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
const isDigit = (code: number): boolean => code >= 48 && code <= 57;

/** The number that starts at a place and where it ends, or why there is none. */
function numberAt(text: string, start: number): { value: number; end: number } | string {
  let digits = '';
  let hasPoint = false;
  let hasDigit = false;
  let at = start;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (isBlank(code)) continue;
    if (isDigit(code)) hasDigit = true;
    else if (code === 46) {
      if (hasPoint) return 'has a number with two points';
      hasPoint = true;
    } else if (!((code === 43 || code === 45) && digits === '')) break;
    digits += text[at]!;
  }
  if (!hasDigit) {
    const next = text[at];
    if (next === '#' || next === '[')
      return 'takes a parameter or a sum, which this reader does not work out';
    return 'stands without a number';
  }
  const value = Number(digits);
  if (Math.abs(value) > LARGEST) return `takes ${digits}, which no machine here can mean`;
  return { value, end: at };
}

/** Beyond this no length, feed or number of a small machine is meant. */
const LARGEST = 1e7;

function shown(text: string, at: number): string {
  const char = String.fromCodePoint(text.codePointAt(at)!);
  return /[\p{L}\p{N}\p{P}\p{S}]/u.test(char) ? `"${char}"` : 'an unprintable character';
}

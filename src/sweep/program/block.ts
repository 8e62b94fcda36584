import { groupOfG, groupOfM, nameOfG, type Group } from './codes.ts';
import type { Finding } from './program.ts';
import type { Word } from './words.ts';

/** What one line asks for, sorted. */
export interface Block {
  /** G and M codes by group. G0 is 0, G91.1 is 911, M30 is 30. */
  readonly codes: ReadonlyMap<Group, number>;
  /** Every other word, by letter. */
  readonly numbers: ReadonlyMap<string, number>;
}

type Fault = Pick<Finding, 'kind' | 'message'>;

const LETTERS = new Set('DFGHIJKLMNPQRSTXYZ');

/** A code counts as whole within this; source: as for `words.ts`. */
const WHOLE_WITHIN = 1e-4;

/** The block of a line's words, or what is wrong with it. */
export function blockOf(words: readonly Word[]): Block | Fault {
  const codes = new Map<Group, number>();
  const numbers = new Map<string, number>();
  for (const { letter, value } of words) {
    if (!LETTERS.has(letter))
      return not(
        `${letter} is ${letter === 'O' ? 'a subprogram or its name' : 'not a word of a three-axis router'}`,
      );
    if (letter === 'G' || letter === 'M') {
      const code = codeOf(letter, value);
      const group = code === null ? undefined : letter === 'G' ? groupOfG(code) : groupOfM(code);
      if (code === null || group === undefined) return not(`${letter}${value} is not known here`);
      if (codes.has(group))
        return {
          kind: 'wrong',
          message: `two codes of one kind (${group}): ${nameIn(letter, codes.get(group)!)} and ${nameIn(letter, code)}`,
        };
      codes.set(group, code);
    } else {
      if (numbers.has(letter)) return { kind: 'wrong', message: `${letter} is there twice` };
      numbers.set(letter, value);
    }
  }
  return { codes, numbers };
}

const not = (message: string): Fault => ({ kind: 'not-understood', message });

const nameIn = (letter: 'G' | 'M', code: number): string =>
  letter === 'G' ? nameOfG(code) : `M${code}`;

function codeOf(letter: 'G' | 'M', value: number): number | null {
  const code = letter === 'G' ? value * 10 : value;
  const whole = Math.round(code);
  return Math.abs(code - whole) <= WHOLE_WITHIN * (letter === 'G' ? 10 : 1) ? whole : null;
}

import { blockOf, type Block } from './block.ts';
import { isCycle, nameOfG, TAKES_AXES } from './codes.ts';
import { drillCycle } from './cycle.ts';
import { arcMove, straight } from './motion.ts';
import type { Finding, Move, Program } from './program.ts';
import { applySettings } from './settings.ts';
import type { Out, State } from './state.ts';
import { AXIS_LETTERS, startOf } from './state.ts';
import { wordsOf } from './words.ts';

export interface ReadOptions {
  /** What a program that says neither G20 nor G21 is taken to be in. */
  readonly units: 'mm' | 'inch';
  /** Called now and then with how many lines are read, of how many. */
  readonly onLines?: (readCount: number, lineCount: number) => void;
}

/** Lines between two calls of `onLines`. */
const STEP = 10_000;
/** Longer lines are cut off by some controllers; source: as for `words.ts`. */
const LONGEST_LINE = 256;

/**
 * All that a program of RS-274 words makes the cutter do, in mm, and everything about it that is wrong,
 * doubtful or not understood, with its line. A line that is not understood is not carried out, and the
 * program is then not sound.
 */
export function readProgram(text: string, options: ReadOptions): Program {
  const lines = text.replace(/^\ufeff/, '').split('\n');
  if (lines.at(-1) === '') lines.pop();
  const state = startOf(options.units);
  const book = bookFor(state);
  const percent = percentLines(lines);
  let lastLine = 0;
  for (let k = 0; k < lines.length && !state.isOver; k++) {
    if (k > 0 && k % STEP === 0) options.onLines?.(k, lines.length);
    const out = book.at(k + 1);
    if (k === percent.last) {
      restIsIgnored(lines, k + 1, book, 'second %');
      break;
    }
    if (k !== percent.first) carryOut(state, lines[k]!, out);
    lastLine = k + 1;
  }
  if (state.isOver) restIsIgnored(lines, lastLine, book, 'end of the program');
  if (percent.first !== null && percent.last === null && !state.isOver)
    book.at(lines.length).find('wrong', 'the program starts with % and ends with neither % nor M2');
  else if (!state.isOver && percent.last === null && lines.length > 0)
    book.at(lines.length).find('beware', 'the program has no end (M2 or M30): is the file whole?');
  if (book.moves.length === 0)
    book.at(Math.max(1, lines.length)).find('wrong', 'the program moves nothing');
  const { moves, findings } = book;
  const isSound = findings.every(({ kind }) => kind === 'beware');
  return { moves, findings, lineCount: lines.length, isSound };
}

interface Book {
  readonly moves: Move[];
  readonly findings: Finding[];
  at(line: number): Out;
}

function bookFor(state: State): Book {
  const [moves, findings]: [Move[], Finding[]] = [[], []];
  const told = new Set<string>();
  return {
    moves,
    findings,
    at: (line) => {
      const find: Out['find'] = (kind, message) => findings.push({ line, kind, message });
      return {
        line,
        find,
        findOnce: (key, kind, message) => {
          if (told.has(key)) return;
          told.add(key);
          find(kind, message);
        },
        move: (move) => moves.push({ ...move, line, zero: state.zero, tool: state.tool }),
      };
    },
  };
}

/** Places of the % that opens a file (its first line that holds anything) and of the one that closes it. */
function percentLines(lines: readonly string[]): {
  readonly first: number | null;
  readonly last: number | null;
} {
  const first = lines.findIndex((line) => line.trim() !== '');
  if (first < 0 || lines[first]!.trim() !== '%') return { first: null, last: null };
  const last = lines.findIndex((line, k) => k > first && line.trim() === '%');
  return { first, last: last < 0 ? null : last };
}

function restIsIgnored(lines: readonly string[], from: number, book: Book, what: string): void {
  const next = lines.findIndex((line, k) => k >= from && !/^\s*%?\s*$/.test(line));
  if (next >= 0)
    book.at(next + 1).find('beware', `stands after the ${what}, so no machine carries it out`);
}

function carryOut(state: State, text: string, out: Out): void {
  if (text.length > LONGEST_LINE)
    out.find('beware', `longer than ${LONGEST_LINE} characters: some controllers cut it off`);
  const line = wordsOf(text);
  if (line.fault !== null) {
    out.find(line.fault.kind, line.fault.message);
    return;
  }
  if (line.words.length === 0) return;
  if (line.mayBeLeftOut)
    out.findOnce(
      '/',
      'beware',
      'starts with /: a machine may leave it out; it is checked as if not',
    );
  const block = blockOf(line.words);
  if ('kind' in block) out.find(block.kind, block.message);
  else run(state, block, out);
}

function run(state: State, block: Block, out: Out): void {
  const { codes, numbers } = block;
  const once = codes.get('once');
  const written = codes.get('motion');
  const hasAxes = AXIS_LETTERS.some((letter) => numbers.has(letter));
  if (once !== undefined && TAKES_AXES.has(once) && written !== undefined && written !== 800) {
    out.find('wrong', `${nameOfG(once)} and ${nameOfG(written)} both want the places of this line`);
    return;
  }
  applySettings(state, block, out);
  if (once === 530) goneByMachine(state, numbers);
  else if (once === undefined || !TAKES_AXES.has(once)) moved(state, block, hasAxes, out);
  unused(state, block, hasAxes, out);
  const stop = codes.get('stop');
  if (stop === 2 || stop === 30) state.isOver = true;
}

/** A move in machine places: where it leads, counted from the work zero, no program tells. */
function goneByMachine(state: State, numbers: Block['numbers']): void {
  AXIS_LETTERS.forEach((letter, k) => {
    if (numbers.has(letter)) state.place[k] = NaN;
  });
}

function moved(state: State, block: Block, hasAxes: boolean, out: Out): void {
  const written = block.codes.get('motion');
  const motion = written === 800 ? null : (written ?? state.motion);
  const hasCentre = ['I', 'J', 'K'].some((letter) => block.numbers.has(letter));
  const isArc = motion === 20 || motion === 30;
  if (hasAxes && motion === null) {
    out.find(
      'wrong',
      written === 800
        ? 'G80 ends a cycle and moves nothing, yet the line has places'
        : 'has places, and nothing (G0, G1, G2, G3) says how to go there',
    );
  } else if (motion !== null && (hasAxes || (isArc && hasCentre))) {
    if (!state.unitsAreSaid)
      out.findOnce('units', 'beware', `moves before G20 or G21: taken as ${state.units}`);
    if (isCycle(motion)) drillCycle(state, block, motion, out);
    else if (isArc) arcMove(state, block, motion, out);
    else straight(state, block, motion, out);
  } else if (written !== undefined && (isArc || isCycle(written))) {
    out.find('wrong', `${nameOfG(written)} has no places`);
  }
  if (written !== undefined) state.motion = written === 800 ? null : written;
}

/** Words that nothing in the line uses: a controller refuses them, or they were meant for something else. */
function unused({ motion }: State, { codes, numbers }: Block, hasAxes: boolean, out: Out): void {
  const isArc = motion === 20 || motion === 30;
  const cycle = motion !== null && isCycle(motion);
  const once = codes.get('once');
  const used: Readonly<Record<string, boolean>> = {
    I: isArc,
    J: isArc,
    K: isArc,
    R: isArc || cycle,
    Q: cycle || codes.get('path') === 640,
    L: cycle,
    P: once === 40 || codes.get('path') === 640 || isArc || cycle,
    H: codes.get('tool length') === 430,
    D: false,
  };
  for (const letter of numbers.keys())
    if (used[letter] === false) out.find('wrong', `${letter} is used by nothing in this line`);
  if (once === 530 && !hasAxes) out.find('wrong', 'G53 names no axis');
}

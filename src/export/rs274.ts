import { invariant, unreachable } from '../num/invariant.ts';
import type { Move, Place, Program } from '../jig/program/program.ts';
import { plainWords } from './plain-words.ts';

export type ProgramUnits = 'mm' | 'inch';

/**
 * The program in RS-274, ASCII, one word group a line, with words that small controllers take: G0 to
 * G4, G17, G20 or G21, G90, G94, M0, M2, M3, M5, F and S. No canned cycles, no parameters, no tool
 * change, no offsets: they act from the zero that is set. Arcs carry I and J from their start.
 * Source of the rules: NIST RS-274/NGC as its descendants document it (numbers without exponent, a
 * full circle without X and Y, end radii that agree), and the word list of 8-bit controllers.
 */
export function rs274Of(planned: Program, units: ProgramUnits): string {
  const program = fromItsZero(planned);
  const unit = UNIT[units];
  const say = (text: string): readonly string[] => commentLines(text);
  const { cutter, witness } = program;
  const turns = program.spindle === 'turns';
  const lines = [
    ...say(`Flipwright - ${program.jobName}`),
    ...say(`Program - ${program.name}`),
    ...program.header.flatMap(say),
    ...say(`Cutter - ${cutter.name} - ${unit.text(cutter.diameterMm)} ${unit.name} wide`),
    ...say(`Units - ${unit.name}. All heights from Z zero.`),
    ...say('Cautions'),
    ...program.cautions.flatMap(say),
    unit.word,
    'G17',
    'G90',
    'G94',
    'M5',
    `G0 Z${unit.text(program.safeMm)}`,
    ...say(`The cutter stops over ${witness.over}. If it does not, do not go on.`),
    `G0 X${unit.text(witness.at.x)} Y${unit.text(witness.at.y)}`,
    `G1 Z${unit.text(witness.at.z)} F${unit.feed(WITNESS_FEED)}`,
    'M0',
    `G0 Z${unit.text(program.safeMm)}`,
    ...(turns
      ? [
          `M3 S${whole(cutter.speedPerMin)}`,
          ...say('Time for the spindle to come up to speed.'),
          'G4 P4',
        ]
      : say('Air cut - the spindle stays off.')),
    ...moveLines(program, unit, say),
    `G0 Z${unit.text(program.safeMm)}`,
    'M5',
    'M2',
  ];
  for (const line of lines) invariant(/^[ -~]{1,72}$/.test(line), `program line ${line}`);
  return `${lines.join('\n')}\n`;
}

/** Heights counted from Z zero instead of the spoilboard. */
function fromItsZero(program: Program): Program {
  const lower = (p: Place): Place => ({ ...p, z: p.z - program.zeroHighMm });
  return {
    ...program,
    safeMm: program.safeMm - program.zeroHighMm,
    witness: { ...program.witness, at: lower(program.witness.at) },
    moves: program.moves.map((move) =>
      move.kind === 'cut' || move.kind === 'arc' ? { ...move, to: lower(move.to) } : move,
    ),
  };
}

/** Slow enough to stop it by hand, mm a minute. */
const WITNESS_FEED = 300;

interface Unit {
  readonly name: string;
  readonly word: 'G20' | 'G21';
  readonly text: (mm: number) => string;
  readonly feed: (mmPerMin: number) => string;
}

const UNIT: Record<ProgramUnits, Unit> = {
  mm: { name: 'mm', word: 'G21', text: (mm) => fixed(mm, 4), feed: (feed) => fixed(feed, 1) },
  inch: {
    name: 'inch',
    word: 'G20',
    text: (mm) => fixed(mm / 25.4, 5),
    feed: (feed) => fixed(feed / 25.4, 3),
  },
};

function moveLines(
  program: Program,
  unit: Unit,
  say: (text: string) => readonly string[],
): readonly string[] {
  let here: Place = { ...program.witness.at, z: program.safeMm };
  let feed = '';
  const fed = (mmPerMin: number): string => {
    const text = ` F${unit.feed(mmPerMin)}`;
    const changed = text === feed ? '' : text;
    feed = text;
    return changed;
  };
  const axes = (to: Place): string =>
    (['x', 'y', 'z'] as const)
      .filter((axis) => unit.text(to[axis]) !== unit.text(here[axis]))
      .map((axis) => ` ${axis.toUpperCase()}${unit.text(to[axis])}`)
      .join('');
  const lineOf = (move: Move): readonly string[] => {
    switch (move.kind) {
      case 'note':
        return say(move.words);
      case 'up':
        here = { ...here, z: program.safeMm };
        return [`G0 Z${unit.text(here.z)}`];
      case 'over': {
        invariant(here.z === program.safeMm, 'only at the safe height does it move fast');
        here = { x: move.x, y: move.y, z: here.z };
        return [`G0 X${unit.text(here.x)} Y${unit.text(here.y)}`];
      }
      case 'cut': {
        const words = axes(move.to);
        here = move.to;
        return words === '' ? [] : [`G1${words}${fed(move.feedMmPerMin)}`];
      }
      case 'arc': {
        const { centre, turn, to } = move;
        const word = turn === 'clockwise' ? 'G2' : 'G3';
        const isFull = to.x === here.x && to.y === here.y;
        const end = isFull ? '' : ` X${unit.text(to.x)} Y${unit.text(to.y)}`;
        const rise = unit.text(to.z) === unit.text(here.z) ? '' : ` Z${unit.text(to.z)}`;
        const from = ` I${unit.text(centre.x - here.x)} J${unit.text(centre.y - here.y)}`;
        here = to;
        return [`${word}${end}${rise}${from}${fed(move.feedMmPerMin)}`];
      }
      default:
        return unreachable(move);
    }
  };
  return program.moves.flatMap(lineOf);
}

/** Comment lines of plain words, none longer than small controllers read. */
function commentLines(text: string): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of plainWords(text.replaceAll(':', ' -')).split(' ').flatMap(pieces)) {
    if (line !== '' && line.length + 1 + word.length > COMMENT_LONG) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  return lines.map((words) => `(${words})`);
}

const COMMENT_LONG = 66;
const pieces = (word: string): readonly string[] => word.match(/.{1,66}/g) ?? [];

/** A plain decimal without exponent; values too large for a machine are our mistake. */
function fixed(value: number, decimals: number): string {
  invariant(Number.isFinite(value) && Math.abs(value) < 1e6, `a program word of ${value}`);
  const text = decimals === 0 ? value.toFixed(0) : value.toFixed(decimals).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

const whole = (value: number): string => fixed(Math.round(value), 0);

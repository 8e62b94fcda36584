import { arcOf, type Centre } from './arc.ts';
import type { Block } from './block.ts';
import { nameOfG } from './codes.ts';
import type { Arc, ArcPlane } from './program.ts';
import type { Out, State, Three } from './state.ts';
import { AXIS_LETTERS, mmPerUnit, spotOf } from './state.ts';

/** Where the line's X, Y and Z lead, from the place and modes before it. */
export function targetOf(state: State, numbers: Block['numbers']): Three {
  const per = mmPerUnit(state);
  return AXIS_LETTERS.map((letter, k) => {
    const value = numbers.get(letter);
    if (value === undefined) return state.place[k]!;
    return value * per + (state.isAbsolute ? state.shift[k]! : state.place[k]!);
  }) as Three;
}

/** G0 or G1. */
export function straight(state: State, block: Block, motion: number, out: Out): void {
  const to = targetOf(state, block.numbers);
  if (motion === 10 && !hasFeed(state, block.numbers, out)) return;
  moveTo(state, to, motion === 0 ? 'rapid' : 'feed', null, out);
}

/** Moves and says so; a feed from or to an unknown place is wrong, a rapid is told once. */
export function moveTo(
  state: State,
  to: Three,
  kind: 'rapid' | 'feed',
  arc: Arc | null,
  out: Out,
): void {
  const from = spotOf(state.place);
  const target = spotOf(to);
  const unknown = AXIS_LETTERS.filter((_, k) => Number.isNaN(to[k]!)).join(' and ');
  state.place = to;
  if (target === null) {
    if (kind === 'feed') out.find('wrong', `cuts while nothing has told where ${unknown} is`);
    else
      out.find(
        'beware',
        `moves while nothing has told where ${unknown} is; the move is not checked`,
      );
    return;
  }
  if (from === null && kind === 'feed')
    out.find('wrong', 'cuts from a place that nothing has told');
  if (from === null)
    out.findOnce(
      'start',
      'beware',
      'comes from a place that nothing has told; the way is not checked',
    );
  const feed = state.isInverseTime ? null : state.feedMmPerMin;
  out.move({ kind, from, to: target, arc, feedMmPerMin: kind === 'rapid' ? null : feed });
}

export function hasFeed(state: State, numbers: Block['numbers'], out: Out): boolean {
  if (state.isInverseTime) {
    if (numbers.has('F')) return true;
    out.find('wrong', 'under G93 every cut needs its own F');
    return false;
  }
  if (state.feedMmPerMin !== null && state.feedMmPerMin > 0) return true;
  out.find('wrong', 'cuts before a feed (F) is set');
  return false;
}

const CENTRE_LETTERS: Readonly<Record<ArcPlane, readonly [string, string]>> = {
  xy: ['I', 'J'],
  zx: ['K', 'I'],
  yz: ['J', 'K'],
};

/** G2 or G3. */
export function arcMove(state: State, block: Block, motion: number, out: Out): void {
  const { numbers } = block;
  if (!hasFeed(state, numbers, out)) return;
  const to = targetOf(state, numbers);
  const [from, target] = [spotOf(state.place), spotOf(to)];
  if (from === null || target === null) {
    out.find('wrong', 'an arc from or to a place that nothing has told');
    state.place = to;
    return;
  }
  const centre = centreOf(state, numbers, motion, out);
  if (centre === null) return;
  const turns = numbers.get('P') ?? 1;
  if (!Number.isInteger(turns) || turns < 1 || turns > MOST_TURNS) {
    out.find('wrong', `P ${turns} is not a number of turns from 1 to ${MOST_TURNS}`);
    return;
  }
  const turn = motion === 20 ? 'clockwise' : 'counter-clockwise';
  const { plane, units } = state;
  const arc = arcOf({ plane, from, to: target, turn, centre, turns, units });
  if (!arc.ok) out.find('wrong', arc.faults[0]!);
  // What comes after is looked at from where the line leads.
  if (arc.ok) moveTo(state, to, 'feed', arc.value, out);
  else state.place = to;
}

const MOST_TURNS = 1000;

function centreOf(
  state: State,
  numbers: Block['numbers'],
  motion: number,
  out: Out,
): Centre | null {
  const per = mmPerUnit(state);
  const radius = numbers.get('R');
  const letters = CENTRE_LETTERS[state.plane];
  const [first, second] = letters.map((letter) => numbers.get(letter));
  for (const letter of ['I', 'J', 'K'])
    if (numbers.has(letter) && !letters.includes(letter)) {
      out.find('wrong', `${letter} has no place in ${nameOfG(motion)} in this plane`);
      return null;
    }
  if (radius !== undefined) {
    if (first === undefined && second === undefined)
      return { by: 'radius', radiusMm: radius * per };
    out.find('wrong', 'the arc has both R and a centre');
    return null;
  }
  if (!state.isArcAbsolute)
    return { by: 'offset', first: scaled(first, per), second: scaled(second, per) };
  const at = (value: number | undefined, letter: string): number | null =>
    value === undefined ? null : value * per + state.shift['IJK'.indexOf(letter)]!;
  return { by: 'place', first: at(first, letters[0]), second: at(second, letters[1]) };
}

const scaled = (value: number | undefined, per: number): number | null =>
  value === undefined ? null : value * per;

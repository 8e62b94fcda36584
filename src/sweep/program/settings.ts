import type { Block } from './block.ts';
import { nameOfG } from './codes.ts';
import type { WorkZero } from './program.ts';
import type { Out, State } from './state.ts';
import { AXIS_LETTERS, mmPerUnit } from './state.ts';

/** Everything of a line but its motion and its end, in the order in which a controller carries it out. */
export function applySettings(state: State, { codes, numbers }: Block, out: Out): void {
  const feedMode = codes.get('feed mode');
  if (feedMode !== undefined) state.isInverseTime = feedMode === 930;
  const units = codes.get('units');
  if (units !== undefined) {
    const said = units === 200 ? 'inch' : 'mm';
    if (state.unitsAreSaid && said !== state.units)
      out.find('beware', 'the units change in the middle of the program');
    if (said !== state.units && state.feedMmPerMin !== null) state.feedMmPerMin = null;
    state.units = said;
    state.unitsAreSaid = true;
  }
  applyFeed(state, numbers, out);
  const tool = numbers.get('T');
  if (tool !== undefined) state.nextTool = tool;
  if (codes.get('tool change') === 6) {
    if (state.nextTool === null) out.find('wrong', 'M6 changes the tool, and no T has named one');
    else state.tool = state.nextTool;
  }
  const plane = codes.get('plane');
  if (plane !== undefined) state.plane = plane === 170 ? 'xy' : plane === 180 ? 'zx' : 'yz';
  if (codes.get('tool length') === 430)
    out.findOnce('G43', 'beware', 'G43 sets a tool length: heights are taken as those of the tip');
  applyZero(state, codes.get('zero'), out);
  if (codes.get('path') === 640)
    out.findOnce('G64', 'beware', 'G64 rounds corners off; they are checked as written');
  const distance = codes.get('distance');
  if (distance !== undefined) state.isAbsolute = distance === 900;
  const arcDistance = codes.get('arc distance');
  if (arcDistance !== undefined) state.isArcAbsolute = arcDistance === 901;
  const back = codes.get('return');
  if (back !== undefined) state.returnsToR = back === 990;
  applyOnce(state, codes.get('once'), numbers, out);
}

function applyFeed(state: State, numbers: Block['numbers'], out: Out): void {
  const feed = numbers.get('F');
  if (feed === undefined) return;
  if (feed < 0) out.find('wrong', `the feed ${feed} is negative`);
  else state.feedMmPerMin = feed * mmPerUnit(state);
}

function applyZero(state: State, code: number | undefined, out: Out): void {
  if (code === undefined) return;
  const zero = nameOfG(code) as WorkZero;
  if (zero === state.zero) return;
  out.find(
    'beware',
    `${zero} counts from another zero than ${state.zero}, and the program does not tell where it lies`,
  );
  state.zero = zero;
  state.place = [NaN, NaN, NaN];
}

function applyOnce(
  state: State,
  code: number | undefined,
  numbers: Block['numbers'],
  out: Out,
): void {
  if (code === undefined) return;
  const per = mmPerUnit(state);
  const named = AXIS_LETTERS.map((letter) => numbers.get(letter));
  switch (code) {
    case 280:
    case 300:
      out.find(
        'beware',
        `${nameOfG(code)} goes to a place that the machine keeps, on a way that no program tells; it is not checked`,
      );
      state.place = [NaN, NaN, NaN];
      return;
    case 281:
    case 301:
      out.find('beware', `${nameOfG(code)} keeps a place in the machine for later`);
      return;
    case 530:
      out.find('beware', 'G53 counts from the machine itself; the move is not checked');
      return;
    case 920:
      if (named.every((value) => value === undefined)) out.find('wrong', 'G92 names no axis');
      else out.find('beware', 'G92 moves the zero to where the cutter stands');
      named.forEach((value, k) => {
        if (value === undefined) return;
        const at = state.place[k]!;
        // Nobody knows where the cutter stands: then that place is the zero that counts from here on.
        if (Number.isNaN(at)) state.place[k] = value * per + state.shift[k]!;
        else state.shift[k] = at - value * per;
      });
      state.shiftKept = [...state.shift];
      return;
    case 921:
      [state.shift, state.shiftKept] = [
        [0, 0, 0],
        [0, 0, 0],
      ];
      return;
    case 922:
      state.shift = [0, 0, 0];
      return;
    case 923:
      state.shift = [...state.shiftKept];
      return;
    default:
  }
}

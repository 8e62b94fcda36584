import type { Block } from './block.ts';
import { nameOfG } from './codes.ts';
import { hasFeed, moveTo, targetOf } from './motion.ts';
import type { Out, State, Three } from './state.ts';
import { mmPerUnit } from './state.ts';

/** More holes in one line are a slip of the keyboard. */
const MOST_REPEATS = 1000;

/**
 * G81, G82, and G73, G83 with pecks: to the hole, down to R, to the bottom at the feed, and back. Pecks
 * visit no place that this does not, so they are one stroke here.
 *
 * Source: the cycles of RS274/NGC as documented for an open controller descended from NISTIR 6556.
 */
export function drillCycle(state: State, block: Block, motion: number, out: Out): void {
  const { numbers } = block;
  const name = nameOfG(motion);
  if (state.plane !== 'xy') {
    out.find('not-understood', `${name} in another plane than G17`);
    return;
  }
  const per = mmPerUnit(state);
  const fresh = state.motion !== motion;
  const kept = (letter: string, before: number | null): number | null =>
    numbers.has(letter) ? numbers.get(letter)! * per : fresh ? null : before;
  state.cycle = {
    z: kept('Z', state.cycle.z),
    r: kept('R', state.cycle.r),
    q: kept('Q', state.cycle.q),
  };
  const repeats = numbers.get('L') ?? 1;
  if (!Number.isInteger(repeats) || repeats < 1 || repeats > MOST_REPEATS) {
    out.find('wrong', `L ${repeats} is not a number of holes from 1 to ${MOST_REPEATS}`);
    return;
  }
  const missing = missingWord(state, motion);
  if (missing !== null) {
    out.find('wrong', `${name} needs ${missing}`);
    return;
  }
  if (!hasFeed(state, numbers, out)) return;
  const heights = heightsOf(state);
  if (Number.isNaN(state.place[2])) {
    out.find('wrong', `${name} while nothing has told where Z is`);
    return;
  }
  if (heights.bottom > heights.clear) {
    out.find('wrong', `${name}: R is below Z`);
    return;
  }
  const back = state.returnsToR ? heights.clear : Math.max(heights.clear, state.place[2]);
  for (let hole = 0; hole < repeats; hole++) {
    const target = targetOf(state, numbers);
    if (state.place[2] < heights.clear) rise(state, heights.clear, out);
    moveTo(state, [target[0], target[1], state.place[2]], 'rapid', null, out);
    rise(state, heights.clear, out);
    moveTo(state, at(state, heights.bottom), 'feed', null, out);
    rise(state, back, out);
  }
}

const at = ({ place }: State, z: number): Three => [place[0], place[1], z];

function rise(state: State, z: number, out: Out): void {
  if (state.place[2] !== z) moveTo(state, at(state, z), 'rapid', null, out);
}

function missingWord({ cycle }: State, motion: number): string | null {
  if (cycle.z === null) return 'a Z';
  if (cycle.r === null) return 'an R';
  if ((motion === 830 || motion === 730) && !(cycle.q !== null && cycle.q > 0))
    return 'a Q above 0';
  return null;
}

/** Under G91, R counts from where the cutter stands and Z from there. */
function heightsOf(state: State): { readonly clear: number; readonly bottom: number } {
  const [z, r] = [state.cycle.z!, state.cycle.r!];
  if (state.isAbsolute) return { clear: r + state.shift[2], bottom: z + state.shift[2] };
  const clear = state.place[2] + r;
  return { clear, bottom: clear + z };
}

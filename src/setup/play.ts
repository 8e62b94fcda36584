import { highest } from './highest.ts';

/**
 * Where a located blank can still go: it may turn a little, and at each turn (told by its sine `s`) be moved to any
 * place of a convex set of the plane, mm. The set is read by rows: `f` across them, `e` along them.
 * Mutable on purpose: one is turned again and again.
 */
export interface Play {
  /** Turns it; false when nothing of the set is left there. */
  readonly turn: (s: number) => boolean;
  /** Sines between which something is left; null when it binds at every turn. */
  readonly limits: () => readonly [number, number] | null;
  /** After a turn: its area, mm². */
  readonly area: () => number;
  /** After a turn: the first and the last row. */
  readonly low: () => number;
  readonly high: () => number;
  /** After a turn: where the row `f` begins and ends. */
  readonly left: (f: number) => number;
  readonly right: (f: number) => number;
}

/** A turn and a move out of a play. */
export interface Taken {
  s: number;
  e: number;
  f: number;
}

const STEPS = 16;
const density = new Float64Array(STEPS + 1);

/**
 * A turn and a move, every one that is possible as likely as another, from three draws of 0 to 1: the turn by the areas,
 * then the row by their lengths, then the place on it. Draws at their ends give the outermost turns and moves. The
 * distribution is told by its values at 17 places and cubics between, in a scale that makes its ends smooth. Against a fine
 * cutting up of the same set, chances are then within 0.05 % of what walls leave, and 0.25 % of what pins do, whose sets have more
 * edges (tests/setup/play.test.ts).
 */
export function taken(play: Play, u: number, v: number, w: number, to: Taken): boolean {
  const limits = play.limits();
  if (limits === null) return false;
  const [low, high] = limits;
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  for (let j = 0; j <= STEPS; j++) {
    const t = -1 + (2 * j) / STEPS;
    density[j] = play.turn(middle + half * slowEnds(t)) ? (1 - t * t) * play.area() : 0;
  }
  // Rounding must not take it over an end, where nothing is left.
  to.s = Math.min(high, Math.max(low, middle + half * slowEnds(drawn(u))));
  takenAt(play, v, w, to);
  return true;
}

/** Pushed towards larger `f` as far as it goes; `w` tells where along the last row it then lies. */
export function pushed(play: Play, w: number, to: Taken): boolean {
  const limits = play.limits();
  if (limits === null) return false;
  to.s = highest((s) => (play.turn(s) ? play.high() : -Infinity), limits[0], limits[1]);
  play.turn(to.s);
  to.f = play.high();
  to.e = between(play.left(to.f), play.right(to.f), w);
  return true;
}

function takenAt(play: Play, v: number, w: number, to: Taken): void {
  play.turn(to.s);
  const low = play.low();
  const high = play.high();
  const middle = (low + high) / 2;
  const half = Math.max(0, (high - low) / 2);
  for (let j = 0; j <= STEPS; j++) {
    const t = -1 + (2 * j) / STEPS;
    const f = middle + half * slowEnds(t);
    density[j] = (1 - t * t) * Math.max(0, play.right(f) - play.left(f));
  }
  to.f = middle + half * slowEnds(drawn(v));
  to.e = between(play.left(to.f), play.right(to.f), w);
}

/** A scale from -1 to 1 that is slow at its ends, where a set ends in a tip. */
export const slowEnds = (t: number): number => (t * (3 - t * t)) / 2;

const between = (left: number, right: number, share: number): number =>
  right > left ? left + share * (right - left) : (left + right) / 2;

/** The place from -1 to 1 below which the share `u` of the density lies. */
function drawn(u: number): number {
  let total = 0;
  for (let j = 0; j < STEPS; j++) total += heapOf(j);
  if (!(total > 0)) return 2 * u - 1;
  let wanted = u * total;
  for (let j = 0; j < STEPS; j++) {
    const heap = heapOf(j);
    if (wanted <= heap || j === STEPS - 1) {
      const from = density[j]!;
      const to = density[j + 1]!;
      const part = heap > 0 ? Math.min(1, wanted / heap) * (from + to) : 0;
      const below = from + Math.sqrt(Math.max(0, from * from + (to - from) * part));
      const share = below > 0 ? Math.min(1, part / below) : 0;
      return -1 + (2 * (j + share)) / STEPS;
    }
    wanted -= heap;
  }
  return 1;
}

/** At its ends a density rises like a power, mostly the fourth: two fifths of what a straight line would hold. */
const LEAST_SHARE = 0.4;

/**
 * What lies between two of the places, in the measure of `from + to`: that of the cubic through the four about it. What
 * is as true one way as the other has an edge in the middle, over which nothing is drawn through.
 */
function heapOf(j: number): number {
  const from = density[j]!;
  const to = density[j + 1]!;
  const before = j === 0 || j === STEPS / 2 ? 3 * (from - to) + density[j + 2]! : density[j - 1]!;
  const after =
    j === STEPS - 1 || j === STEPS / 2 - 1 ? 3 * (to - from) + density[j - 1]! : density[j + 2]!;
  return Math.max(LEAST_SHARE * (from + to), from + to - (before - from - to + after) / 12);
}

/**
 * Sines on both sides of one that is possible, up to which it is. `over` is 0 or less where it is possible, and beyond
 * that rises with how far it is not, mm.
 */
export function limitsFrom(over: (s: number) => number, inside: number): readonly [number, number] {
  return [limitFrom(over, inside, -1), limitFrom(over, inside, 1)];
}

/** Sine beyond which nothing is tried: no locating leaves 30 degrees. */
export const LARGEST_TURN = 0.5;
/** So narrow a bracket counts as a limit. */
const NARROW = 1e-14;
const MOST_STEPS = 90;

/**
 * A straight line through what two turns are over by that are not possible leads to the limit; where it does not make
 * the bracket an eighth in three steps, halving does.
 */
function limitFrom(over: (s: number) => number, inside: number, way: 1 | -1): number {
  let near = 0;
  let far = FIRST_TURN;
  let atFar = over(inside + way * far);
  while (atFar <= 0) {
    near = far;
    if (far >= LARGEST_TURN) return inside + way * near;
    far = Math.min(4 * far, LARGEST_TURN);
    atFar = over(inside + way * far);
  }
  let before = Infinity;
  let atBefore = Infinity;
  let checked = Infinity;
  let halves = false;
  for (let step = 0; step < MOST_STEPS; step++) {
    const width = far - near;
    if (width <= NARROW) break;
    if (step % 3 === 0) {
      halves = width > checked / 8;
      checked = width;
    }
    const back = (atFar * (before - far)) / (atBefore - atFar);
    let at = far - width / 2;
    // Close to the limit, twice as far as the line leads ends on the other side of it.
    if (!halves && back > 0 && back < width)
      at = far - (back < width / 64 ? 2 * back + NARROW / 4 : back);
    const here = over(inside + way * at);
    if (here <= 0) near = at;
    else {
      before = far;
      atBefore = atFar;
      far = at;
      atFar = here;
    }
  }
  return inside + way * near;
}

/** The first turn that is tried: most locatings leave some thousandths. */
const FIRST_TURN = 1e-5;

import { dot, plus, type XY } from '../second-model/vectors.ts';

/** A place to which a blank can be moved at one turn, against two limits (or one, pushed straight at it). */
export interface Corner {
  readonly move: XY;
  /** How much further it could be pushed, mm, for each radian that it turned on. */
  readonly gain: number;
}

/** The room that a loose blank has: its corners at a turn, for a push one way; none when there is no room. */
export type Room = (turnRad: number, way: XY) => readonly Corner[];

export interface Found {
  readonly turnRad: number;
  readonly move: XY;
}

const FURTHEST_RAD = 0.2;
/** Of the search for some room. */
const [SEARCHED_RAD, TRIES] = [0.01, 60];
const HALVINGS = 60;
/** Corners this near are one, or are one side across the push. */
const TIED_MM = 1e-9;

/** A turn about `start` at which there is room; null when there is none at any that is tried. */
export function insideOf(room: Room, start: number): number | null {
  for (let k = 0; k <= TRIES; k++)
    for (const way of [1, -1]) {
      const turnRad = start + (way * k * SEARCHED_RAD) / TRIES;
      if (room(turnRad, RIGHT).length > 0) return turnRad;
    }
  return null;
}

const RIGHT: XY = { x: 1, y: 0 };

/** As far round as there is room. */
export function turnedMost(room: Room, inside: number, way: 1 | -1): Found {
  let [near, far] = [0, FURTHEST_RAD];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (near + far) / 2;
    if (room(inside + way * middle, RIGHT).length > 0) near = middle;
    else far = middle;
  }
  const turnRad = inside + way * near;
  return { turnRad, move: middleOf(room(turnRad, RIGHT)) };
}

/** What is pushed at a leading hole that is tight can swing either way, and rests in either of two places. */
export class RestsTwice extends Error {}

const SAMPLES = 16;

/**
 * Pushed as far as it goes one way: where turning on gains no more.
 * @throws RestsTwice where there is more than one such turn.
 */
export function pushedMost(room: Room, inside: number, way: XY): Found {
  let low = turnedMost(room, inside, -1).turnRad;
  let high = turnedMost(room, inside, 1).turnRad;
  const gains = Array.from({ length: SAMPLES }, (_, k) => {
    const turnRad = low + ((k + 0.5) * (high - low)) / SAMPLES;
    return furthest(room(turnRad, way), way)[0]?.gain ?? 0;
  });
  if (gains.some((gain, k) => gain > 0 && k > 0 && gains[k - 1]! < 0)) throw new RestsTwice();
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    const [best] = furthest(room(middle, way), way);
    const isGaining = best === undefined ? middle < inside : best.gain > 0;
    if (isGaining) low = middle;
    else high = middle;
  }
  // Either end can be without room, by rounding.
  const turnRad = room(low, way).length > 0 ? low : high;
  return { turnRad, move: middleOf(furthest(room(turnRad, way), way)) };
}

function furthest(corners: readonly Corner[], way: XY): readonly Corner[] {
  const sorted = corners.toSorted((a, b) => dot(b.move, way) - dot(a.move, way));
  return sorted.filter(({ move }) => dot(move, way) > dot(sorted[0]!.move, way) - TIED_MM);
}

/** Half-way between the outermost of them. */
function middleOf(corners: readonly Corner[]): XY {
  const mid = (of: (at: XY) => number): number => {
    const all = corners.map(({ move }) => of(move));
    return (Math.min(...all) + Math.max(...all)) / 2;
  };
  return plus({ x: mid(({ x }) => x), y: 0 }, { x: 0, y: mid(({ y }) => y) });
}

import { cross, dot, plus, turned, type XY } from '../second-model/vectors.ts';
import type { Found, Room } from './room.ts';

/** A hole of the blank, as it lies unmoved on the machine, and the pin it is put on: circles. */
export interface HoleOnPin {
  readonly hole: XY;
  readonly pin: XY;
  /** What their radii differ by, 0 or more. */
  readonly playMm: number;
}

const ROUNDING_MM = 1e-12;

/** Turns are about `pivot`. */
export const roomOnPins =
  (pairs: readonly HoleOnPin[], pivot: XY): Room =>
  (turnRad, way) => {
    const discs = pairs.map(({ hole, pin, playMm }) => {
      const arm = turned(plus(hole, pivot, -1), turnRad);
      // Where a move must bring the hole to, and how that runs with the turn.
      return { at: plus(plus(pin, pivot, -1), arm, -1), run: { x: arm.y, y: -arm.x }, playMm };
    });
    const tops = discs.map(({ at, run, playMm }) => ({
      move: plus(at, way, playMm),
      gain: dot(way, run),
    }));
    const crossings = discs.flatMap((one, j) =>
      discs.slice(j + 1).flatMap((other) =>
        crossingsOf(one, other).map((move) => {
          const [to, from] = [plus(move, one.at, -1), plus(move, other.at, -1)];
          // The push is borne by both.
          const whole = cross(to, from);
          const [a, b] = [cross(way, from) / whole, cross(to, way) / whole];
          return { move, gain: a * dot(to, one.run) + b * dot(from, other.run) };
        }),
      ),
    );
    return [...tops, ...crossings].filter(({ move }) =>
      discs.every(({ at, playMm }) => {
        const off = plus(move, at, -1);
        return Math.hypot(off.x, off.y) <= playMm + ROUNDING_MM;
      }),
    );
  };

interface Disc {
  readonly at: XY;
  readonly playMm: number;
}

function crossingsOf(one: Disc, other: Disc): readonly XY[] {
  const way = plus(other.at, one.at, -1);
  const apart = Math.hypot(way.x, way.y);
  const [r, s] = [one.playMm, other.playMm];
  if (r === 0 || s === 0 || apart > r + s || apart < Math.abs(r - s)) return [];
  const along = (apart * apart + r * r - s * s) / (2 * apart);
  const aside = Math.sqrt(Math.max(0, r * r - along * along));
  const foot = plus(one.at, way, along / apart);
  const across = { x: -way.y / apart, y: way.x / apart };
  return [plus(foot, across, aside), plus(foot, across, -aside)];
}

/** Middle of the holes on the middle of the pins, turned so that squares of what is left are least. */
export function bestFit(pairs: readonly HoleOnPin[], pivot: XY): Found {
  const middle = (of: (pair: HoleOnPin) => XY): XY => ({
    x: pairs.reduce((sum, pair) => sum + of(pair).x, 0) / pairs.length,
    y: pairs.reduce((sum, pair) => sum + of(pair).y, 0) / pairs.length,
  });
  const [hole, pin] = [middle((pair) => pair.hole), middle((pair) => pair.pin)];
  let [along, across] = [0, 0];
  for (const pair of pairs) {
    const [from, to] = [plus(pair.hole, hole, -1), plus(pair.pin, pin, -1)];
    along += dot(from, to);
    across += cross(from, to);
  }
  const turnRad = Math.atan2(across, along);
  const arm = turned(plus(hole, pivot, -1), turnRad);
  return { turnRad, move: plus(plus(pin, pivot, -1), arm, -1) };
}

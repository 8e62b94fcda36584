import { dipBetween, FAN, FAN_STEP, FAN_X, FAN_Y } from './fan.ts';
import { reach, type Landed } from './support.ts';

/**
 * The smallest, over all directions, of how much further `outer` reaches than `inner`: of two convex
 * outlines one within the other the least distance between them, and less than 0, by how much, where
 * `inner` sticks out. Kinks of the difference that point down are the sides of `outer`: each is
 * tried; between them the difference is smooth and its dips are closed in on from a fan of
 * directions (to 1e-7 of how far apart the vertices are that face each other).
 */
export function leastGap(outer: Landed, inner: Landed): number {
  const gap = (ux: number, uy: number): number => reach(outer, ux, uy) - reach(inner, ux, uy);
  const values = new Float64Array(FAN);
  for (let k = 0; k < FAN; k++) values[k] = gap(FAN_X[k]!, FAN_Y[k]!);
  let least = Infinity;
  eachSide(outer, (ux, uy) => {
    least = Math.min(least, gap(ux, uy));
  });
  for (let k = 0; k < FAN; k++) {
    const here = values[k]!;
    if (here > values[(k + 1) % FAN]! || here > values[(k + FAN - 1) % FAN]!) continue;
    least = Math.min(least, here, dipBeside(gap, k));
  }
  return least;
}

/** The dip of a function of direction between the neighbours of fan direction `k`. */
export function dipBeside(f: (ux: number, uy: number) => number, k: number): number {
  const [ux, uy] = [FAN_X[k]!, FAN_Y[k]!];
  const beside = (s: number): number => {
    const length = Math.sqrt(1 + s * s);
    return f((ux - s * uy) / length, (uy + s * ux) / length);
  };
  return dipBetween(beside, -FAN_STEP, FAN_STEP);
}

/** Each direction in which two neighbouring vertices of an outline reach alike: square to its sides. */
export function eachSide(outline: Landed, say: (ux: number, uy: number) => void): void {
  const { x, y, more } = outline;
  const n = x.length;
  if (n < 2) return;
  for (let k = 0; k < n; k++) {
    const next = (k + 1) % n;
    const [dx, dy] = [x[next]! - x[k]!, y[next]! - y[k]!];
    const length = Math.sqrt(dx * dx + dy * dy);
    // Where one end grew more than the other the side leans by the difference.
    const lean = (more[k]! - more[next]!) / length;
    const across = Math.sqrt(1 - lean * lean);
    const [tx, ty] = [dx / length, dy / length];
    say(across * ty + lean * tx, lean * ty - across * tx);
  }
}

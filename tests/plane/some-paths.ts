import type { Path, PathVertex } from '../../src/plane/path.ts';

/** Numbers in [0, 1) from a seed (Park and Miller's minimal standard). */
export function randoms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** A closed path of corners by turns near and far from the origin; some sides are arcs, hollow or bulging. */
export function starPath(next: () => number, sizeMm: number): Path {
  const count = 5 + Math.floor(6 * next());
  return Array.from({ length: count }, (_, k): PathVertex => {
    const turn = (2 * Math.PI * (k + 0.5 * next())) / count;
    const far = sizeMm * (0.55 + 0.45 * next());
    const bulge = next() < 0.5 ? 0 : 0.5 * (next() - 0.5);
    return { at: { x: far * Math.cos(turn), y: far * Math.sin(turn) }, bulge };
  });
}

/** A path `byMm` larger or smaller about the origin. */
export const scaledPath = (path: Path, share: number): Path =>
  path.map(({ at, bulge }) => ({ at: { x: share * at.x, y: share * at.y }, bulge }));

/** The path seen in a mirror across the y axis, still counter-clockwise. */
export const mirroredPath = (path: Path): Path =>
  path
    .map((_, k) => {
      const { at } = path[k]!;
      const before = path[(k + path.length - 1) % path.length]!;
      return { at: { x: -at.x, y: at.y }, bulge: before.bulge };
    })
    .reverse();

/** An L: 60 by 40 with a notch of 30 by 20 out of its upper right. */
export const ELL: Path = [
  [0, 0],
  [60, 0],
  [60, 20],
  [30, 20],
  [30, 40],
  [0, 40],
].map(([x, y]) => ({ at: { x: x!, y: y! }, bulge: 0 }));

import { linearSolve } from '../../src/num/linear-solve.ts';
import type { Height } from '../../src/measure/bed-plane.ts';

/**
 * Flatness by trying every pair of parallel planes that can be the closest: each touches three places
 * on one side and one on the other, or two and two. Written apart from the searched one.
 */
export function bruteZone(heights: readonly Height[]): number {
  const n = heights.length;
  let best = Infinity;
  const tryLeans = (kx: number, ky: number): void => {
    const off = heights.map(({ at, heightMm }) => heightMm - kx * at.x - ky * at.y);
    best = Math.min(best, Math.max(...off) - Math.min(...off));
  };
  const leansThrough = (pairs: readonly (readonly [number, number])[]): void => {
    const rows = pairs.map(([i, j]) => {
      const [a, b] = [heights[i]!, heights[j]!];
      return [a.at.x - b.at.x, a.at.y - b.at.y, a.heightMm - b.heightMm];
    });
    const leans = linearSolve(
      rows.map(([x, y]) => [x!, y!]),
      rows.map(([, , z]) => z!),
    );
    if (leans !== null) tryLeans(leans[0]!, leans[1]!);
  };
  for (let i = 0; i < n; i++)
    for (let j = 0; j < i; j++)
      for (let k = 0; k < n; k++)
        for (let l = 0; l < k; l++) {
          leansThrough([
            [i, j],
            [k, l],
          ]);
        }
  return best;
}

import { reachFinder } from './convex-gap.ts';
import { betweenPieces, fromStarts, toPiece } from './ring-distance.ts';
import { farthestFinder } from './ring-farthest.ts';
import { keptShare, nearerBy } from './ring-moved.ts';
import { nearPieces, type Near } from './ring-near.ts';
import { isWithin } from './ring-side.ts';
import type { Ring } from './ring.ts';

/** The distances from the line of an inner outline to that of an outer one, of what is landed last, mm. */
export interface RingGaps {
  /** From a place of the inner line to the nearest of the outer, negative outside: the least. */
  readonly least: () => number;
  /** The most. */
  readonly most: () => number;
}

/** Make it while both rings lie nominally. Source: registration.md rule 10. */
export function ringGaps(outer: Ring, inner: Ring): RingGaps {
  const near = nearPieces(inner, outer);
  const nominalMm = near.distances[near.order[0]!]![0]!;
  const beganWithin = startsWithin(outer, inner);
  const farthest = farthestFinder(inner, outer, near);
  const reaches = { least: 0, most: 0 };
  const byReach = reachFinder(outer, inner);
  return {
    least: () => {
      if (byReach?.(reaches) === true) return reaches.least;
      const apartMm = leastApart(inner, outer, near);
      const stayed = nominalMm * keptShare(outer) > nearerBy(inner, outer);
      const within = stayed ? beganWithin : apartMm > 0 && startsWithin(outer, inner);
      return within ? apartMm : -farthest('outside', 0);
    },
    most: () => {
      const most = farthest('within', 0);
      return most > 0 ? most : -leastApart(inner, outer, near);
    },
  };
}

/**
 * The largest step between two outlines that are meant to be one: the largest distance from a place of either
 * to the nearest of the other, mm. Make it while both lie nominally.
 */
export function ringStep(one: Ring, other: Ring): () => number {
  const byReach = reachFinder(one, other);
  const reaches = { least: 0, most: 0 };
  const there = farthestFinder(one, other, nearPieces(one, other));
  const back = farthestFinder(other, one, nearPieces(other, one));
  return () =>
    byReach?.(reaches) === true
      ? Math.max(Math.abs(reaches.least), Math.abs(reaches.most))
      : back('all', there('all', 0));
}

/** Least distance between both lines; 0 where they cross. */
function leastApart(from: Ring, to: Ring, near: Near): number {
  const kept = keptShare(to);
  const byMm = nearerBy(from, to);
  let least = Infinity;
  for (const i of near.order) {
    const distances = near.distances[i]!;
    if (distances[0]! * kept - byMm >= least) break;
    const pieces = near.pieces[i]!;
    for (let k = 0; k < pieces.length; k++) {
      const atLeast = distances[k]! * kept - byMm;
      if (atLeast >= least) break;
      const here =
        atLeast > 0 ? fromStarts(from, i, to, pieces[k]!) : betweenPieces(from, i, to, pieces[k]!);
      if (here < least) least = here;
    }
  }
  for (let i = 0; i < from.count; i++)
    if (near.beyondMm[i]! * kept - byMm < least)
      for (let j = 0; j < to.count; j++) least = Math.min(least, betweenPieces(from, i, to, j));
  return least;
}

function startsWithin(outer: Ring, inner: Ring): boolean {
  const [x, y] = [inner.x[0]!, inner.y[0]!];
  let [nearest, least] = [0, Infinity];
  for (let j = 0; j < outer.count; j++) {
    const here = toPiece(outer, j, x, y);
    if (here < least) [nearest, least] = [j, here];
  }
  return isWithin(outer, nearest, x, y);
}

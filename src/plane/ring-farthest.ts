import { boundPart, type Bound, type Part } from './ring-bound.ts';
import { toPiece } from './ring-distance.ts';
import { between, divide, type Spot } from './ring-divide.ts';
import { keptShare, nearerBy } from './ring-moved.ts';
import type { Near } from './ring-near.ts';
import { isWithin } from './ring-side.ts';
import type { Ring } from './ring.ts';

/** Which places of a ring count: all, or only those within or outside the other. */
export type Counting = 'all' | 'within' | 'outside';

/** The largest distance from a place of one ring that counts to the nearest of another, mm, if more than `leastMm`. */
export type Farthest = (counting: Counting, leastMm: number) => number;

/** The answer is found to this, mm. */
const SURE_MM = 1e-7;
/** Stretches shorter than this are not looked into, mm. */
const SHORT_MM = 1e-9;
/** An arc of a quarter turn, the longest there is, is longer than its chord by this at most. */
const ARC_SHARE = 1.11072073454;
/** Both parts of a divided stretch are at least this long, as a share of it. */
const CLEAR_SHARE = 1e-3;

/**
 * First all corners are looked at; then each stretch between two places is looked into as long as it may hold more
 * than the best so far, which what it is away from one piece at most tells.
 */
export function farthestFinder(from: Ring, to: Ring, near: Near): Farthest {
  const startMm = new Float64Array(from.count);
  const startNearest = new Int32Array(from.count);
  const startCounts = new Uint8Array(from.count);
  const part: Part = { piece: 0, x0: 0, y0: 0, x1: 0, y1: 0 };
  const bound: Bound = { mostMm: 0, isBetween: false, x: 0, y: 0 };
  const found = { piece: 0, mm: 0 };
  const spot: Spot = { x: 0, y: 0 };
  let counts: Counting = 'all';
  let best = 0;
  let [kept, byMm] = [1, 0];

  /** Fills `found` with the piece of `to` that is nearest to a place of piece `i`, and how far it is. */
  const nearest = (i: number, x: number, y: number): void => {
    const pieces = near.pieces[i]!;
    const distances = near.distances[i]!;
    found.piece = pieces[0]!;
    found.mm = Infinity;
    for (let k = 0; k < pieces.length && distances[k]! * kept - byMm < found.mm; k++)
      closer(pieces[k]!, x, y);
    if (near.beyondMm[i]! * kept - byMm < found.mm)
      for (let j = 0; j < to.count; j++) closer(j, x, y);
  };
  const closer = (j: number, x: number, y: number): void => {
    const here = toPiece(to, j, x, y);
    if (here >= found.mm) return;
    found.mm = here;
    found.piece = j;
  };
  /** What a stretch is away at most by one piece as far as `spot` and by another from there on. */
  const mostOfBoth = (a: number, mmStart: number, b: number, mmEnd: number): number => {
    const { x1, y1 } = part;
    part.x1 = spot.x;
    part.y1 = spot.y;
    boundPart(from, part, to, a, mmStart, toPiece(to, a, spot.x, spot.y), bound);
    const before = bound.mostMm;
    if (before > best + SURE_MM) return before;
    part.x0 = spot.x;
    part.y0 = spot.y;
    part.x1 = x1;
    part.y1 = y1;
    boundPart(from, part, to, b, toPiece(to, b, spot.x, spot.y), mmEnd, bound);
    return Math.max(before, bound.mostMm);
  };
  const doesCount = (x: number, y: number): boolean =>
    counts === 'all' || isWithin(to, found.piece, x, y) === (counts === 'within');

  /** The stretch of piece `i` between two places, of each how far it is from which piece, and whether it counts. */
  const look = (
    i: number,
    x0: number,
    y0: number,
    mm0: number,
    nearest0: number,
    counts0: boolean,
    x1: number,
    y1: number,
    mm1: number,
    nearest1: number,
    counts1: boolean,
  ): void => {
    const chordMm = Math.sqrt((x0 - x1) * (x0 - x1) + (y0 - y1) * (y0 - y1));
    const alongMm = from.radius[i] === 0 ? chordMm : ARC_SHARE * chordMm;
    if ((mm0 + mm1 + alongMm) / 2 <= best + SURE_MM || chordMm < SHORT_MM) return;
    // No place between is on the other side: the line of `to` is further from both ends than they are long.
    if (!counts0 && !counts1 && alongMm <= mm0 + mm1) return;
    part.piece = i;
    part.x0 = x0;
    part.y0 = y0;
    part.x1 = x1;
    part.y1 = y1;
    if (nearest0 === nearest1) {
      boundPart(from, part, to, nearest0, mm0, mm1, bound);
      if (bound.mostMm <= best + SURE_MM) return;
      if (!bound.isBetween) between(from, part, 0.5, bound);
    } else {
      boundPart(from, part, to, nearest0, mm0, toPiece(to, nearest0, x1, y1), bound);
      if (bound.mostMm <= best + SURE_MM) return;
      divide(from, part, to, nearest0, nearest1, spot);
      if (mostOfBoth(nearest0, mm0, nearest1, mm1) <= best + SURE_MM) return;
      bound.x = spot.x;
      bound.y = spot.y;
    }
    part.x0 = x0;
    part.y0 = y0;
    part.x1 = x1;
    part.y1 = y1;
    const clear = (CLEAR_SHARE * chordMm) ** 2;
    if (
      (bound.x - x0) ** 2 + (bound.y - y0) ** 2 < clear ||
      (bound.x - x1) ** 2 + (bound.y - y1) ** 2 < clear
    )
      between(from, part, 0.5, bound);
    const { x, y } = bound;
    nearest(i, x, y);
    const { mm, piece } = found;
    const isCounted = doesCount(x, y);
    if (isCounted && mm > best) best = mm;
    look(i, x0, y0, mm0, nearest0, counts0, x, y, mm, piece, isCounted);
    look(i, x, y, mm, piece, isCounted, x1, y1, mm1, nearest1, counts1);
  };

  return (counting, leastMm) => {
    counts = counting;
    best = leastMm;
    kept = keptShare(to);
    byMm = nearerBy(from, to);
    for (let i = 0; i < from.count; i++) {
      nearest(i, from.x[i]!, from.y[i]!);
      const isCounted = doesCount(from.x[i]!, from.y[i]!);
      startMm[i] = found.mm;
      startNearest[i] = found.piece;
      startCounts[i] = isCounted ? 1 : 0;
      if (isCounted && found.mm > best) best = found.mm;
    }
    for (let i = 0; i < from.count; i++) {
      const end = from.next[i]!;
      look(
        i,
        from.x[i]!,
        from.y[i]!,
        startMm[i]!,
        startNearest[i]!,
        startCounts[i] === 1,
        from.x[end]!,
        from.y[end]!,
        startMm[end]!,
        startNearest[end]!,
        startCounts[end] === 1,
      );
    }
    return best;
  };
}

import type { Ring } from './ring.ts';

/** How much further one outline reaches than another: the least and the most of all directions, mm. */
export interface Reaches {
  least: number;
  most: number;
}

/**
 * Fills what is asked for two outlines that bulge everywhere, or says that it cannot, where a corner is left round;
 * null when one of them never bulges everywhere. Both are
 * gone round once by direction: between two directions in which a piece of either begins both reach as one
 * arc or corner each, and the difference is that of two discs, least or most at an end or along their
 * centres.
 *
 * Of two such outlines, one within the other, the least is the least distance between them, and less than 0, by
 * how much, where the other sticks out; the larger of both without their signs is the largest distance from a place
 * of either line to the nearest of the other. Source: R. Schneider, Convex Bodies, 2nd ed. 2014, lemma 1.8.14 (from memory).
 */
export function reachFinder(one: Ring, other: Ring): ((reaches: Reaches) => boolean) | null {
  if (one.turning === null || other.turning === null) return null;
  const first = newFan(one, one.turning);
  const second = newFan(other, other.turning);
  return (reaches) => {
    if (one.hasRoundedCorner || other.hasRoundedCorner) return false;
    load(first);
    load(second);
    goRound(first, second, reaches);
    return true;
  };
}

/** The arcs and corners of a ring, counter-clockwise, with the direction in which each begins. */
interface Fan {
  readonly ring: Ring;
  readonly pieces: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly radius: Float64Array;
  readonly ux: Float64Array;
  readonly uy: Float64Array;
}

function newFan(ring: Ring, pieces: Int32Array): Fan {
  const column = (): Float64Array => new Float64Array(pieces.length);
  return { ring, pieces, x: column(), y: column(), radius: column(), ux: column(), uy: column() };
}

/** Lines shorter than this have no clear direction: a corner between two arcs, mm. */
const CLEAR_MM = 1e-6;

/**
 * A piece begins in the direction square to the line before it, by which a long line is off by nothing: the arcs
 * themselves, taken as round, end a little askew.
 */
function load({ ring, pieces, x, y, radius, ux, uy }: Fan): void {
  const isForward = ring.within === 1;
  for (let k = 0; k < pieces.length; k++) {
    const piece = pieces[k]!;
    const begin = isForward ? piece : ring.next[piece]!;
    const before = isForward ? ring.before[piece]! : ring.next[piece]!;
    const r = Math.abs(ring.radius[piece]!);
    radius[k] = r;
    x[k] = r > 0 ? ring.centreX[piece]! : ring.x[begin]!;
    y[k] = r > 0 ? ring.centreY[piece]! : ring.y[begin]!;
    const end = ring.next[before]!;
    const dx = ring.x[end]! - ring.x[before]!;
    const dy = ring.y[end]! - ring.y[before]!;
    const length = ring.within * Math.sqrt(dx * dx + dy * dy);
    const s = Math.abs(ring.radius[before]!);
    if (s !== 0 || Math.abs(length) < CLEAR_MM) {
      // The larger arc: one that a corner left is as small as what rounding it is off by.
      const arc = s > r ? before : piece;
      const size = Math.max(s, r);
      ux[k] = (ring.x[begin]! - ring.centreX[arc]!) / size;
      uy[k] = (ring.y[begin]! - ring.centreY[arc]!) / size;
      continue;
    }
    ux[k] = dy / length;
    uy[k] = -dx / length;
  }
}

function goRound(one: Fan, other: Fan, reaches: Reaches): void {
  const n = one.pieces.length;
  const m = other.pieces.length;
  let i = 0;
  let j = beginsBefore(other, one.ux[0]!, one.uy[0]!);
  let ux = one.ux[0]!;
  let uy = one.uy[0]!;
  reaches.least = Infinity;
  reaches.most = -Infinity;
  for (let step = 0; step <= n + m; step++) {
    const iNext = i + 1 === n ? 0 : i + 1;
    const jNext = j + 1 === m ? 0 : j + 1;
    const isOneFirst = one.ux[iNext]! * other.uy[jNext]! - one.uy[iNext]! * other.ux[jNext]! > 0;
    const toX = isOneFirst ? one.ux[iNext]! : other.ux[jNext]!;
    const toY = isOneFirst ? one.uy[iNext]! : other.uy[jNext]!;
    const dx = one.x[i]! - other.x[j]!;
    const dy = one.y[i]! - other.y[j]!;
    const wider = one.radius[i]! - other.radius[j]!;
    take(reaches, dx * ux + dy * uy + wider);
    take(reaches, dx * toX + dy * toY + wider);
    const fromStart = ux * dy - uy * dx;
    const toEnd = dx * toY - dy * toX;
    if (fromStart > 0 && toEnd > 0) take(reaches, wider + Math.sqrt(dx * dx + dy * dy));
    else if (fromStart < 0 && toEnd < 0) take(reaches, wider - Math.sqrt(dx * dx + dy * dy));
    if (isOneFirst) i = iNext;
    else j = jNext;
    ux = toX;
    uy = toY;
  }
}

function take(reaches: Reaches, here: number): void {
  if (here < reaches.least) reaches.least = here;
  if (here > reaches.most) reaches.most = here;
}

/** The piece that has begun last at a direction. */
function beginsBefore({ ux, uy, pieces }: Fan, x: number, y: number): number {
  let found = 0;
  let nearest = -Infinity;
  for (let k = 0; k < pieces.length; k++) {
    if (ux[k]! * y - uy[k]! * x < 0) continue;
    const along = ux[k]! * x + uy[k]! * y;
    if (along > nearest) [found, nearest] = [k, along];
  }
  return found;
}

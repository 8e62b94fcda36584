import type { Part } from './ring-bound.ts';
import { toPiece } from './ring-distance.ts';
import type { Ring } from './ring.ts';

/** A place that is filled again for each question. */
export interface Spot {
  x: number;
  y: number;
}

/** Sine of the largest turn between two pieces that counts as smooth. */
const SMOOTH = 1e-3;
/** Steps towards the place where one piece stops being the nearest and another begins. */
const SEEKS = 6;

/**
 * Fills `spot` with a place between the ends of a stretch where its nearest piece of `to` changes from `a` to
 * `b`: opposite the place where they join smoothly, else where they are as far.
 */
export function divide(ring: Ring, part: Part, to: Ring, a: number, b: number, spot: Spot): void {
  if (to.next[a] === b && opposite(ring, part, to, b, spot)) return;
  if (to.next[b] === a && opposite(ring, part, to, a, spot)) return;
  let low = 0;
  let high = 1;
  let atLow = toPiece(to, b, part.x0, part.y0) - toPiece(to, a, part.x0, part.y0);
  let atHigh = toPiece(to, b, part.x1, part.y1) - toPiece(to, a, part.x1, part.y1);
  between(ring, part, 0.5, spot);
  for (let k = 0; k < SEEKS && atLow > 0 && atHigh < 0; k++) {
    // By their roots, since past the end of a piece the distance to it grows with the square of how far.
    const rootLow = Math.sqrt(atLow);
    const share = low + ((high - low) * rootLow) / (rootLow + Math.sqrt(-atHigh));
    between(ring, part, share, spot);
    const here = toPiece(to, b, spot.x, spot.y) - toPiece(to, a, spot.x, spot.y);
    if (here > 0) [low, atLow] = [share, here];
    else [high, atHigh] = [share, here];
  }
}

/**
 * The place of a stretch on the line square to `to` where piece `k` of it begins; false when the stretch does not
 * cross that, or a corner is there.
 */
function opposite(ring: Ring, part: Part, to: Ring, k: number, spot: Spot): boolean {
  const x = to.x[k]!;
  const y = to.y[k]!;
  const before = to.before[k]!;
  const tx = headingX(to, k, y);
  const ty = headingY(to, k, x);
  const bx = headingX(to, before, y);
  const by = headingY(to, before, x);
  if (!(Math.abs(tx * by - ty * bx) < SMOOTH && tx * bx + ty * by > 0)) return false;
  const atStart = (part.x0 - x) * tx + (part.y0 - y) * ty;
  const atEnd = (part.x1 - x) * tx + (part.y1 - y) * ty;
  if (atStart * atEnd >= 0) return false;
  const radius = Math.abs(ring.radius[part.piece]!);
  if (radius === 0) {
    between(ring, part, atStart / (atStart - atEnd), spot);
    return true;
  }
  const cx = ring.centreX[part.piece]!;
  const cy = ring.centreY[part.piece]!;
  const along = ((x - cx) * tx + (y - cy) * ty) / radius;
  if (!(along * along < 1)) return false;
  const left = tx * ((part.y0 + part.y1) / 2 - cy) - ty * ((part.x0 + part.x1) / 2 - cx);
  const across = (left > 0 ? 1 : -1) * Math.sqrt(1 - along * along);
  spot.x = cx + radius * (along * tx - across * ty);
  spot.y = cy + radius * (along * ty + across * tx);
  return true;
}

/** Fills `spot` with the place at a share of a stretch. */
export function between(ring: Ring, part: Part, share: number, spot: Spot): void {
  spot.x = part.x0 + share * (part.x1 - part.x0);
  spot.y = part.y0 + share * (part.y1 - part.y0);
  const radius = Math.abs(ring.radius[part.piece]!);
  if (radius === 0) return;
  const dx = spot.x - ring.centreX[part.piece]!;
  const dy = spot.y - ring.centreY[part.piece]!;
  const out = radius / Math.sqrt(dx * dx + dy * dy);
  spot.x = ring.centreX[part.piece]! + out * dx;
  spot.y = ring.centreY[part.piece]! + out * dy;
}

/**
 * Which way a piece runs at its place (x, y), as a vector of length 1, which along a line is the same everywhere; NaN
 * of a piece without length.
 */
export function headingX(ring: Ring, k: number, y: number): number {
  const radius = ring.radius[k]!;
  if (radius !== 0) return (ring.centreY[k]! - y) / radius;
  return (ring.x[ring.next[k]!]! - ring.x[k]!) / lengthOf(ring, k);
}

export function headingY(ring: Ring, k: number, x: number): number {
  const radius = ring.radius[k]!;
  if (radius !== 0) return (x - ring.centreX[k]!) / radius;
  return (ring.y[ring.next[k]!]! - ring.y[k]!) / lengthOf(ring, k);
}

function lengthOf(ring: Ring, k: number): number {
  const end = ring.next[k]!;
  const dx = ring.x[end]! - ring.x[k]!;
  const dy = ring.y[end]! - ring.y[k]!;
  return Math.sqrt(dx * dx + dy * dy);
}

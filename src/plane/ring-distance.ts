import { piecesCross } from './ring-cross.ts';
import { facesArc, type Ring } from './ring.ts';

/** Distance from a place to one piece of a ring, mm. */
export function toPiece(ring: Ring, k: number, px: number, py: number): number {
  const end = ring.next[k]!;
  const sx = ring.x[k]!;
  const sy = ring.y[k]!;
  const ex = ring.x[end]!;
  const ey = ring.y[end]!;
  const radius = ring.radius[k]!;
  const fromStart = (px - sx) * (px - sx) + (py - sy) * (py - sy);
  const fromEnd = (px - ex) * (px - ex) + (py - ey) * (py - ey);
  if (radius === 0) {
    const dx = ex - sx;
    const dy = ey - sy;
    const along = (px - sx) * dx + (py - sy) * dy;
    const length2 = dx * dx + dy * dy;
    if (along <= 0) return Math.sqrt(fromStart);
    if (along >= length2) return Math.sqrt(fromEnd);
    return Math.abs((px - sx) * dy - (py - sy) * dx) / Math.sqrt(length2);
  }
  const cx = px - ring.centreX[k]!;
  const cy = py - ring.centreY[k]!;
  if (facesArc(ring, k, cx, cy)) return Math.abs(Math.sqrt(cx * cx + cy * cy) - Math.abs(radius));
  return Math.sqrt(fromStart < fromEnd ? fromStart : fromEnd);
}

/** Least distance between a piece of one ring and a piece of another, mm; 0 where they cross. */
export function betweenPieces(one: Ring, i: number, other: Ring, j: number): number {
  if (piecesCross(one, i, other, j)) return 0;
  const iEnd = one.next[i]!;
  const jEnd = other.next[j]!;
  return Math.min(
    fromStarts(one, i, other, j),
    toPiece(other, j, one.x[iEnd]!, one.y[iEnd]!),
    toPiece(one, i, other.x[jEnd]!, other.y[jEnd]!),
  );
}

/**
 * The least of the distances from where either piece starts to the other, and between the places where they face
 * each other, mm: of all pairs of pieces of two rings that do not cross the least of these is the least distance,
 * since each ends where another starts.
 */
export function fromStarts(one: Ring, i: number, other: Ring, j: number): number {
  const here = toPiece(other, j, one.x[i]!, one.y[i]!);
  const there = toPiece(one, i, other.x[j]!, other.y[j]!);
  const least = here < there ? here : there;
  const isArc = other.radius[j] !== 0;
  if (one.radius[i] !== 0) {
    const jEnd = other.next[j]!;
    // Two arcs face each other along the line through both centres, an arc and a line square to the line.
    const dx = isArc ? other.centreX[j]! - one.centreX[i]! : other.y[jEnd]! - other.y[j]!;
    const dy = isArc ? other.centreY[j]! - one.centreY[i]! : other.x[j]! - other.x[jEnd]!;
    return fromArc(one, i, other, j, dx, dy, least);
  }
  if (!isArc) return least;
  const iEnd = one.next[i]!;
  return fromArc(other, j, one, i, one.y[iEnd]! - one.y[i]!, one.x[i]! - one.x[iEnd]!, least);
}

/** The least of `least` and the distances from where an arc faces (dx, dy) and its opposite. */
function fromArc(
  arcs: Ring,
  i: number,
  other: Ring,
  j: number,
  dx: number,
  dy: number,
  least: number,
): number {
  const far = Math.sqrt(dx * dx + dy * dy);
  if (far === 0) return least;
  const r = Math.abs(arcs.radius[i]!) / far;
  let found = least;
  if (facesArc(arcs, i, dx, dy)) {
    const here = toPiece(other, j, arcs.centreX[i]! + r * dx, arcs.centreY[i]! + r * dy);
    if (here < found) found = here;
  }
  if (facesArc(arcs, i, -dx, -dy)) {
    const here = toPiece(other, j, arcs.centreX[i]! - r * dx, arcs.centreY[i]! - r * dy);
    if (here < found) found = here;
  }
  return found;
}

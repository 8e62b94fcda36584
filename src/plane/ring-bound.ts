import { toPiece } from './ring-distance.ts';
import { facesArc, type Ring } from './ring.ts';

/** A stretch of one piece of a ring, between two of its places. */
export interface Part {
  piece: number;
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

/** What a stretch is away from a piece of another ring at most, mm; filled again for each question. */
export interface Bound {
  mostMm: number;
  /** Whether the most is between the ends of the stretch, at (x, y). */
  isBetween: boolean;
  x: number;
  y: number;
}

/**
 * Fills `bound` for a stretch and piece `j` of `to`, from which its ends are away by `atStart` and `atEnd`. From a
 * line the distance to a line, to a place, and to an arc from outside is hollow, so most at an end; to
 * an arc from within it has one hump. Round an arc it is most at an end or where the arc faces straight to or
 * from what it is measured to.
 */
export function boundPart(
  ring: Ring,
  part: Part,
  to: Ring,
  j: number,
  atStart: number,
  atEnd: number,
  bound: Bound,
): void {
  const isArc = to.radius[j] !== 0;
  const cx = to.centreX[j]!;
  const cy = to.centreY[j]!;
  bound.isBetween = false;
  if (isArc && !(faces(to, j, part.x0, part.y0) && faces(to, j, part.x1, part.y1))) {
    const end = to.next[j]!;
    // To any place of a piece it is no less than to the piece.
    bound.mostMm = Math.min(
      farthestFrom(ring, part, to.x[j]!, to.y[j]!),
      farthestFrom(ring, part, to.x[end]!, to.y[end]!),
    );
    return;
  }
  bound.mostMm = atStart > atEnd ? atStart : atEnd;
  if (ring.radius[part.piece] === 0) {
    if (!isArc) return;
    const dx = part.x1 - part.x0;
    const dy = part.y1 - part.y0;
    const along = (cx - part.x0) * dx + (cy - part.y0) * dy;
    const length2 = dx * dx + dy * dy;
    if (along > 0 && along < length2)
      look(to, j, part.x0 + (along / length2) * dx, part.y0 + (along / length2) * dy, bound);
    return;
  }
  const ox = ring.centreX[part.piece]!;
  const oy = ring.centreY[part.piece]!;
  if (isArc) {
    lookFacing(ring, part, to, j, ox - cx, oy - cy, bound);
    return;
  }
  const end = to.next[j]!;
  lookFacing(ring, part, to, j, to.y[end]! - to.y[j]!, to.x[j]! - to.x[end]!, bound);
  lookFacing(ring, part, to, j, ox - to.x[j]!, oy - to.y[j]!, bound);
  lookFacing(ring, part, to, j, ox - to.x[end]!, oy - to.y[end]!, bound);
}

/** Share of its radius by which a place may lie past the end of an arc: that makes its distance wrong by 1e-14 of it. */
const PAST_SHARE = 1e-7;

/** Whether an arc faces a place, or all but does. */
function faces(to: Ring, j: number, x: number, y: number): boolean {
  const dx = x - to.centreX[j]!;
  const dy = y - to.centreY[j]!;
  if (facesArc(to, j, dx, dy)) return true;
  const end = to.next[j]!;
  const ax = to.x[j]! - to.centreX[j]!;
  const ay = to.y[j]! - to.centreY[j]!;
  const bx = to.x[end]! - to.centreX[j]!;
  const by = to.y[end]! - to.centreY[j]!;
  const past = PAST_SHARE * (dx * dx + dy * dy + ax * ax + ay * ay);
  const isAtStart = Math.abs(ax * dy - ay * dx) < past && ax * dx + ay * dy > 0;
  return isAtStart || (Math.abs(bx * dy - by * dx) < past && bx * dx + by * dy > 0);
}

function farthestFrom(ring: Ring, part: Part, x: number, y: number): number {
  const radius = Math.abs(ring.radius[part.piece]!);
  if (radius !== 0) {
    const dx = ring.centreX[part.piece]! - x;
    const dy = ring.centreY[part.piece]! - y;
    if (sweeps(ring, part, dx, dy)) return Math.sqrt(dx * dx + dy * dy) + radius;
  }
  const fromStart = (part.x0 - x) * (part.x0 - x) + (part.y0 - y) * (part.y0 - y);
  const fromEnd = (part.x1 - x) * (part.x1 - x) + (part.y1 - y) * (part.y1 - y);
  return Math.sqrt(fromStart > fromEnd ? fromStart : fromEnd);
}

/** Looks where the stretch of an arc faces (dx, dy), and where its opposite. */
function lookFacing(
  ring: Ring,
  part: Part,
  to: Ring,
  j: number,
  dx: number,
  dy: number,
  bound: Bound,
): void {
  const isAhead = sweeps(ring, part, dx, dy);
  if (!isAhead && !sweeps(ring, part, -dx, -dy)) return;
  const far = Math.sqrt(dx * dx + dy * dy);
  if (far === 0) return;
  const out = (isAhead ? 1 : -1) * (Math.abs(ring.radius[part.piece]!) / far);
  look(to, j, ring.centreX[part.piece]! + out * dx, ring.centreY[part.piece]! + out * dy, bound);
}

/** Whether a direction from the centre of a stretch's arc is between those of its ends. */
function sweeps(ring: Ring, part: Part, dx: number, dy: number): boolean {
  const cx = ring.centreX[part.piece]!;
  const cy = ring.centreY[part.piece]!;
  const fromStart = (part.x0 - cx) * dy - (part.y0 - cy) * dx;
  const toEnd = dx * (part.y1 - cy) - dy * (part.x1 - cx);
  return ring.radius[part.piece]! > 0 ? fromStart > 0 && toEnd > 0 : fromStart < 0 && toEnd < 0;
}

function look(to: Ring, j: number, x: number, y: number, bound: Bound): void {
  const here = toPiece(to, j, x, y);
  if (here <= bound.mostMm) return;
  bound.mostMm = here;
  bound.isBetween = true;
  bound.x = x;
  bound.y = y;
}

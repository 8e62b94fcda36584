import type { Ring } from './ring.ts';

/** Arcs that bulge by less than this are lines, mm: rounding would send their centres anywhere. */
const STRAIGHT_MM = 1e-10;

/** Makes a piece the arc from where it starts by way of a place to where the next one starts. */
export function bend(ring: Ring, k: number, middleX: number, middleY: number): void {
  const end = ring.next[k]!;
  const ax = middleX - ring.x[k]!;
  const ay = middleY - ring.y[k]!;
  const bx = ring.x[end]! - ring.x[k]!;
  const by = ring.y[end]! - ring.y[k]!;
  const a2 = ax * ax + ay * ay;
  const b2 = bx * bx + by * by;
  const cross = ax * by - ay * bx;
  if (cross * cross <= STRAIGHT_MM * STRAIGHT_MM * b2) {
    ring.radius[k] = 0;
    return;
  }
  const cx = (by * a2 - ay * b2) / (2 * cross);
  const cy = (ax * b2 - bx * a2) / (2 * cross);
  ring.centreX[k] = ring.x[k]! + cx;
  ring.centreY[k] = ring.y[k]! + cy;
  ring.radius[k] = Math.sign(cross) * Math.sqrt(cx * cx + cy * cy);
}

/**
 * Finishes a corner of what a cutter left when it went round it, the piece `k`, with the wall in this direction
 * from the axis half-way round: a cutter that is smaller than it was taken for leaves it round, one that
 * is larger cuts both walls back to where they meet. How far the corner was moved by that, mm; null where it is round.
 */
export function turnCorner(ring: Ring, k: number, wallX: number, wallY: number): number | null {
  const [before, after] = [ring.before[k]!, ring.next[k]!];
  const [px, py, qx, qy] = [ring.x[k]!, ring.y[k]!, ring.x[after]!, ring.y[after]!];
  if ((qx - px) * -wallY + (qy - py) * wallX > 0) {
    // Half-way between both the axes bend what is left by less than they move it.
    if (ring.radius[k]! > 0) ring.radius[k] = 0;
    return null;
  }
  const [x, y] = meeting(ring, before, after, (px + qx) / 2, (py + qy) / 2);
  ring.radius[k] = 0;
  ring.x[k] = x;
  ring.y[k] = y;
  ring.x[after] = x;
  ring.y[after] = y;
  return Math.sqrt((x - px) * (x - px) + (y - py) * (y - py));
}

/** Where the lines or circles of two pieces meet, nearest to a place that is about there. */
function meeting(ring: Ring, i: number, j: number, nearX: number, nearY: number): [number, number] {
  const isArc = ring.radius[i] !== 0;
  const isOtherArc = ring.radius[j] !== 0;
  if (isArc && isOtherArc) return ofCircles(ring, i, j, nearX, nearY);
  if (isArc) return ofLineAndCircle(ring, j, i, nearX, nearY);
  if (isOtherArc) return ofLineAndCircle(ring, i, j, nearX, nearY);
  const [iEnd, jEnd] = [ring.next[i]!, ring.next[j]!];
  const [dx, dy] = [ring.x[iEnd]! - ring.x[i]!, ring.y[iEnd]! - ring.y[i]!];
  const [ex, ey] = [ring.x[jEnd]! - ring.x[j]!, ring.y[jEnd]! - ring.y[j]!];
  const cross = dx * ey - dy * ex;
  if (cross === 0) return [nearX, nearY];
  const share = ((ring.x[j]! - ring.x[i]!) * ey - (ring.y[j]! - ring.y[i]!) * ex) / cross;
  return [ring.x[i]! + share * dx, ring.y[i]! + share * dy];
}

function ofLineAndCircle(
  ring: Ring,
  line: number,
  arc: number,
  nearX: number,
  nearY: number,
): [number, number] {
  const end = ring.next[line]!;
  const [dx, dy] = [ring.x[end]! - ring.x[line]!, ring.y[end]! - ring.y[line]!];
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return [nearX, nearY];
  const [ux, uy] = [dx / length, dy / length];
  const [cx, cy] = [ring.centreX[arc]!, ring.centreY[arc]!];
  const off = (cx - ring.x[line]!) * uy - (cy - ring.y[line]!) * ux;
  return alongFrom(cx - off * uy, cy + off * ux, ux, uy, ring.radius[arc]! ** 2 - off * off, [
    nearX,
    nearY,
  ]);
}

function ofCircles(
  ring: Ring,
  i: number,
  j: number,
  nearX: number,
  nearY: number,
): [number, number] {
  const [cx, cy] = [ring.centreX[i]!, ring.centreY[i]!];
  const [dx, dy] = [ring.centreX[j]! - cx, ring.centreY[j]! - cy];
  const far = Math.sqrt(dx * dx + dy * dy);
  if (far === 0) return [nearX, nearY];
  const [ux, uy] = [dx / far, dy / far];
  const [r2, s2] = [ring.radius[i]! ** 2, ring.radius[j]! ** 2];
  const along = (far * far + r2 - s2) / (2 * far);
  return alongFrom(cx + along * ux, cy + along * uy, -uy, ux, r2 - along * along, [nearX, nearY]);
}

/** The place a root's length to either side of (x, y) along (ux, uy) that is nearer to the given one. */
function alongFrom(
  x: number,
  y: number,
  ux: number,
  uy: number,
  inRoot: number,
  [nearX, nearY]: readonly [number, number],
): [number, number] {
  const root = Math.sqrt(Math.max(0, inRoot));
  const signed = (nearX - x) * ux + (nearY - y) * uy >= 0 ? root : -root;
  return [x + signed * ux, y + signed * uy];
}

import { headingX, headingY } from './ring-divide.ts';
import { facesArc, type Ring } from './ring.ts';

/** Whether a place whose nearest piece is `k` lies within what the ring encloses; on its line either may be said. */
export function isWithin(ring: Ring, k: number, px: number, py: number): boolean {
  return leftOf(ring, k, px, py) * ring.within > 0;
}

/** Positive when the place is on the left of the ring, negative on the right. */
function leftOf(ring: Ring, k: number, px: number, py: number): number {
  const end = ring.next[k]!;
  const radius = ring.radius[k]!;
  if (radius !== 0) {
    const [cx, cy] = [px - ring.centreX[k]!, py - ring.centreY[k]!];
    if (facesArc(ring, k, cx, cy)) return radius - Math.sign(radius) * Math.sqrt(cx * cx + cy * cy);
  } else {
    const [dx, dy] = [ring.x[end]! - ring.x[k]!, ring.y[end]! - ring.y[k]!];
    const along = (px - ring.x[k]!) * dx + (py - ring.y[k]!) * dy;
    if (along > 0 && along < dx * dx + dy * dy)
      return dx * (py - ring.y[k]!) - dy * (px - ring.x[k]!);
  }
  const fromStart = (px - ring.x[k]!) ** 2 + (py - ring.y[k]!) ** 2;
  const fromEnd = (px - ring.x[end]!) ** 2 + (py - ring.y[end]!) ** 2;
  return leftOfCorner(ring, fromStart < fromEnd ? k : end, px, py);
}

/**
 * The same of a place that is nearest to the start of piece `k`: by the sum of the two directions square to
 * the pieces that meet there. Source: Baerentzen and Aanaes, Signed distance computation using the angle
 * weighted pseudonormal, IEEE TVCG 11 (2005) 243: in a plane both have the same weight.
 */
function leftOfCorner(ring: Ring, k: number, px: number, py: number): number {
  const [x, y] = [ring.x[k]!, ring.y[k]!];
  let after = k;
  while (isPoint(ring, after)) after = ring.next[after]!;
  let before = ring.before[k]!;
  while (isPoint(ring, before)) before = ring.before[before]!;
  const dx = headingX(ring, after, ring.y[after]!) + headingX(ring, before, y);
  const dy = headingY(ring, after, ring.x[after]!) + headingY(ring, before, x);
  return dx * (py - y) - dy * (px - x);
}

function isPoint(ring: Ring, k: number): boolean {
  const end = ring.next[k]!;
  return ring.x[k] === ring.x[end] && ring.y[k] === ring.y[end];
}

import type { Landed } from './support.ts';

/** Inner vertices nearer to the round outline's centre than this share of its radius have no clear direction. */
const CLEAR_SHARE = 0.05;
/** Half the width of the parabola through a dip, as a tangent: the dip lies within some 1e-3 of where it is tried. */
const NARROW = 0.01;
/** A vertex this much (of the radius) farther from the outline than another cannot come nearest: axes lean by less. */
const WORTH_SHARE = 0.02;

/**
 * The least distance from a convex outline with vertices to a round one about it, or null where this
 * short way does not see clearly. Of a vertex v the gap in direction u is smooth, and least where u
 * points from the round outline's centre to v, but for how the machine's axes lean: one parabola there
 * finds the dip to 1e-9 mm.
 */
export function gapInRound(outer: Landed, inner: Landed): number | null {
  if (outer.x.length !== 1 || inner.x.length < 2) return null;
  const reachMm = outer.discMm + outer.roundMm + outer.more[0]!;
  let least = Infinity;
  for (let k = 0; k < inner.x.length; k++) {
    const dx = inner.x[k]! - outer.x[0]!;
    const dy = inner.y[k]! - outer.y[0]!;
    const far = Math.sqrt(dx * dx + dy * dy);
    if (far < CLEAR_SHARE * reachMm) return null;
    const [ux, uy] = [dx / far, dy / far];
    const middle = gapOf(outer, inner, k, ux, uy);
    if (middle > least + WORTH_SHARE * reachMm) continue;
    const length = Math.sqrt(1 + NARROW * NARROW);
    const low = gapOf(outer, inner, k, (ux + NARROW * uy) / length, (uy - NARROW * ux) / length);
    const high = gapOf(outer, inner, k, (ux - NARROW * uy) / length, (uy + NARROW * ux) / length);
    const bend = low + high - 2 * middle;
    if (bend <= 0) return null;
    least = Math.min(least, middle - (high - low) ** 2 / (8 * bend));
  }
  return least;
}

/** How much further the round outline reaches in a direction than one vertex of the inner one. */
function gapOf(outer: Landed, inner: Landed, k: number, ux: number, uy: number): number {
  const along =
    (outer.x[0]! - inner.x[k]!) * ux +
    (outer.y[0]! - inner.y[k]!) * uy +
    outer.more[0]! -
    inner.more[k]!;
  return (
    along + discReach(outer, ux, uy) - discReach(inner, ux, uy) + outer.roundMm - inner.roundMm
  );
}

function discReach({ discMm, map, growX, growY }: Landed, ux: number, uy: number): number {
  if (discMm === 0) return 0;
  const wx = ux + map[0]! * ux + map[2]! * uy + growX;
  const wy = uy + map[1]! * ux + map[3]! * uy + growY;
  return discMm * Math.sqrt(wx * wx + wy * wy);
}

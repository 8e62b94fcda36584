/**
 * An outline of straight lines and round arcs in the order in which they are run along, in one loop or
 * several; its pieces are numbered, and each ends where its `next` begins. Mutable on purpose: one is filled
 * again in each trial.
 */
export interface Ring {
  readonly count: number;
  readonly next: Int32Array;
  readonly before: Int32Array;
  /** Where each piece begins, mm. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Centre of each arc, and its radius: positive where it turns left, negative where right, 0 of a line. */
  readonly centreX: Float64Array;
  readonly centreY: Float64Array;
  readonly radius: Float64Array;
  /** 1 when what the outline encloses lies to the left of its pieces, -1 when to the right. */
  readonly within: 1 | -1;
  readonly moved: Moved;
  /** All its pieces but the lines, counter-clockwise, when it is one loop that bulges everywhere; else null. */
  readonly turning: Int32Array | null;
  /** A smaller cutter went round a sharp corner of it and left that round, by less than the axes may bend it. */
  hasRoundedCorner: boolean;
}

/**
 * How far the places of a ring lie from their nominal places: one at (x, y) by `off` (offX, offY, xx, xy, yx,
 * yy: offX + xx x + xy y, and so on) but for `ownMm` at most. Nominally all are in a box.
 */
export interface Moved {
  readonly off: Float64Array;
  ownMm: number;
  readonly box: { lowX: number; lowY: number; highX: number; highY: number };
}

/** A ring of loops of so many pieces each, all at the origin. */
export function newRing(
  loops: readonly number[],
  within: 1 | -1,
  turning: readonly number[] | null,
): Ring {
  const count = loops.reduce((sum, pieces) => sum + pieces, 0);
  const next = new Int32Array(count);
  const before = new Int32Array(count);
  let from = 0;
  for (const pieces of loops) {
    for (let k = 0; k < pieces; k++) {
      next[from + k] = from + ((k + 1) % pieces);
      before[from + k] = from + ((k + pieces - 1) % pieces);
    }
    from += pieces;
  }
  const column = (): Float64Array => new Float64Array(count);
  return {
    count,
    next,
    before,
    x: column(),
    y: column(),
    centreX: column(),
    centreY: column(),
    radius: column(),
    within,
    hasRoundedCorner: false,
    turning: turning === null ? null : Int32Array.from(turning),
    moved: { off: new Float64Array(6), ownMm: 0, box: { lowX: 0, lowY: 0, highX: 0, highY: 0 } },
  };
}

/** Whether a direction from an arc's centre is one that the arc sweeps over; it turns by less than a half. */
export function facesArc(ring: Ring, k: number, dx: number, dy: number): boolean {
  const end = ring.next[k]!;
  const cx = ring.centreX[k]!;
  const cy = ring.centreY[k]!;
  const fromStart = (ring.x[k]! - cx) * dy - (ring.y[k]! - cy) * dx;
  const toEnd = dx * (ring.y[end]! - cy) - dy * (ring.x[end]! - cx);
  return ring.radius[k]! > 0 ? fromStart >= 0 && toEnd >= 0 : fromStart <= 0 && toEnd <= 0;
}

/** How far the outline reaches from the origin in the direction (ux, uy) of length 1, mm. */
export function reachOfRing(ring: Ring, ux: number, uy: number): number {
  let most = -Infinity;
  for (let k = 0; k < ring.count; k++) {
    const corner = ring.x[k]! * ux + ring.y[k]! * uy;
    if (corner > most) most = corner;
    const radius = ring.radius[k]!;
    // The far side of an arc is beyond its ends, whichever way it is run along.
    if (radius !== 0 && facesArc(ring, k, ux, uy)) {
      const arc = ring.centreX[k]! * ux + ring.centreY[k]! * uy + Math.abs(radius);
      if (arc > most) most = arc;
    }
  }
  return most;
}

/**
 * A convex outline as it landed, in the terms of how far it reaches in each direction: vertices in
 * counter-clockwise order, each reaching `more` further than it lies, then a disc that went through the
 * machine's axes, then what stays round. Mutable on purpose: one is filled again in each trial.
 */
export interface Landed {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly more: Float64Array;
  /** Radius of the disc, and what its growth adds to the direction it is looked at from. */
  discMm: number;
  growX: number;
  growY: number;
  /** The map of the machine's axes less the identity: xx, xy, yx, yy. */
  readonly map: Float64Array;
  roundMm: number;
}

export const newLanded = (count: number): Landed => ({
  x: new Float64Array(count),
  y: new Float64Array(count),
  more: new Float64Array(count),
  discMm: 0,
  growX: 0,
  growY: 0,
  map: new Float64Array(4),
  roundMm: 0,
});

/** How far the outline reaches from the origin in the direction (ux, uy) of length 1, mm. */
export function reach(outline: Landed, ux: number, uy: number): number {
  const { x, y, more, map, discMm } = outline;
  const n = x.length;
  let most = x[0]! * ux + y[0]! * uy + more[0]!;
  for (let k = 1; k < n; k++) {
    const here = x[k]! * ux + y[k]! * uy + more[k]!;
    if (here > most) most = here;
  }
  if (discMm === 0) return most + outline.roundMm;
  const wx = ux + map[0]! * ux + map[2]! * uy + outline.growX;
  const wy = uy + map[1]! * ux + map[3]! * uy + outline.growY;
  return most + discMm * Math.sqrt(wx * wx + wy * wy) + outline.roundMm;
}

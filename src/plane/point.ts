/**
 * A place in a plane, mm. The frame is part of the type, so that a place on the blank cannot be
 * taken for a place on the machine:
 *
 * - `blank`: looking at the front face, x right, y up, origin at the nominal lower-left corner.
 * - `layout`: the machine, x right, y away from the operator, origin at the near-left corner of
 *   the rectangle that the nominal blank fills on every placing.
 * - `bed`: the machine, same directions, origin at the near-left corner of the bed.
 * - `fence`: along the fence from the front-up corner, and from the fence into the blank.
 * - `corner`: the same, but from the corner at which one piece of a stop stands.
 */
export type Frame = 'blank' | 'layout' | 'bed' | 'fence' | 'corner';

export interface Point<F extends Frame> {
  readonly x: number;
  readonly y: number;
  /** Never present at run time; it only keeps frames apart. */
  readonly frame?: F;
}

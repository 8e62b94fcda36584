import type { Edge, Face } from '../job/job.ts';
import type { Point } from '../plane/point.ts';

/** Side of the nominal rectangle on the bed. */
export type Side = 'near' | 'far' | 'left' | 'right';

/**
 * One laying of the blank, nominally: what is up, what touches what, where the zero is.
 * All places in the layout frame unless said.
 */
export interface Placing {
  readonly faceUp: Face;
  readonly order: 'first' | 'second';
  /** How blank coordinates become layout coordinates: as they are, or mirrored in x or y. */
  readonly mirror: 'none' | 'x' | 'y';
  /** The near-left corner of the place where the nominal blank lies; dowels may shift it when it is turned. */
  readonly lies: Point<'layout'>;
  /** Along this side the placing is measured, and the blank's edge there: the fence's, if there is one. */
  readonly base: LyingEdge;
  /** From this side: that of the side stop in use, if there is one. */
  readonly end: LyingEdge;
  readonly sideStop: 'first' | 'second' | null;
  readonly contacts: readonly Contact[];
  /** Nominal zero of this placing's program. */
  readonly zero: Point<'layout'>;
}

/** One place where a stop can touch the blank's edge. */
export interface Contact {
  /** Stable: `fence-1`, `fence-2`, `side-1`, `side-2` (the ends of an arm), on the second side stop `side2-1`... */
  readonly id: string;
  readonly face: 'fence' | 'side';
  readonly kind: 'button' | 'arm-end';
  readonly at: Point<'layout'>;
  readonly edge: Edge;
  /** Along the blank's edge, from its lower or left end, mm. */
  readonly alongEdgeMm: number;
}

/** An edge of the blank, and the side of the place where the blank lies that it makes. */
export interface LyingEdge {
  readonly side: Side;
  readonly edge: Edge;
}

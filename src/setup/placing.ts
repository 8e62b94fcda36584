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
  /** The side of the rectangle where the fence stands, and the blank's edge against it. */
  readonly fence: { readonly side: Side; readonly edge: Edge };
  readonly sideStop: {
    readonly side: Side;
    readonly edge: Edge;
    readonly which: 'first' | 'second';
  };
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

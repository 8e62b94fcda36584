import type { Edge } from '../job/job.ts';
import type { Columns } from './columns.ts';
import { EDGE_INDEX } from './edges.ts';

/** How an edge of the blank is read in the seat frame of a placing. */
export interface EdgeInFrame {
  /** Where the edge's numbers stand in the shapes, and its bevel's column. */
  readonly at: number;
  readonly bevel: number;
  /** Along the edge, t = from + sign * (seat-frame coordinate). */
  readonly from: number;
  readonly sign: 1 | -1;
}

export function edgeInFrame(
  edge: Edge,
  sign: 1 | -1,
  lengthMm: number,
  columns: Columns,
): EdgeInFrame {
  return {
    at: EDGE_INDEX[edge],
    bevel: columns.of({ kind: 'bevel', edge }),
    from: sign === 1 ? 0 : lengthMm,
    sign,
  };
}

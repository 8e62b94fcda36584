import type { Edge, Job } from '../job/job.ts';
import type { Columns } from './columns.ts';

/**
 * The four edges of one blank as they are. Each is, in the blank frame, a straight line that
 * stands out from its nominal place by `out + slope * t` (t along the edge from its lower or left
 * end), plus a sag of `curve * t * (span - t)`.
 *
 * The lower edge is the reference line. Width is measured at `widthAtYMm`, height at `heightAtXMm`.
 */
export interface EdgeShapes {
  /** Four numbers an edge: out, slope, curve, span; edges in the order of `EDGE_INDEX`. */
  readonly shape: Float64Array;
  /** Writes the edges of trial `i`, as cut for the first placing. */
  readonly load: (draws: Float64Array, i: number) => void;
  /** Writes them again after the wood has moved by the strains. */
  readonly swell: (draws: Float64Array, i: number, strainX: number, strainY: number) => void;
}

export const EDGE_INDEX: Record<Edge, number> = { lower: 0, upper: 4, left: 8, right: 12 };
const EDGES: readonly Edge[] = ['lower', 'upper', 'left', 'right'];

export function edgeShapes(job: Job, columns: Columns): EdgeShapes {
  const { widthMm, heightMm, widthAtYMm, heightAtXMm } = job.blank;
  const shape = new Float64Array(16);
  const width = columns.of({ kind: 'width' });
  const height = columns.of({ kind: 'height' });
  const square = columns.of({ kind: 'square' });
  const taperX = columns.of({ kind: 'taper', axis: 'x' });
  const taperY = columns.of({ kind: 'taper', axis: 'y' });
  const crook = EDGES.map((edge) => columns.of({ kind: 'crook', edge }));

  const swell = (draws: Float64Array, i: number, strainX: number, strainY: number): void => {
    const growX = 1 + strainX;
    const growY = 1 + strainY;
    const lean = draws[square + i]!;
    const beta = draws[taperX + i]!;
    const tau = draws[taperY + i]!;
    set(0, 0, 0, draws[crook[0]! + i]!, widthMm, growX, growY);
    const up = draws[height + i]! - tau * heightAtXMm;
    set(4, up * growY + strainY * heightMm, tau, draws[crook[1]! + i]!, widthMm, growX, growY);
    set(8, 0, -lean, draws[crook[2]! + i]!, heightMm, growY, growX);
    const right = draws[width + i]! - beta * widthAtYMm;
    const slope = lean + beta;
    set(
      12,
      right * growX + strainX * widthMm,
      slope,
      draws[crook[3]! + i]!,
      heightMm,
      growY,
      growX,
    );
  };

  /** `crook` is sag over length; `along` and `across` are the growth factors of the two directions. */
  const set = (
    at: number,
    out: number,
    slope: number,
    crookRatio: number,
    lengthMm: number,
    along: number,
    across: number,
  ): void => {
    shape[at] = out;
    shape[at + 1] = (slope * across) / along;
    shape[at + 2] = ((4 * crookRatio) / lengthMm) * (across / (along * along));
    shape[at + 3] = lengthMm * along;
  };

  return {
    shape,
    swell,
    load: (draws, i) => {
      swell(draws, i, 0, 0);
    },
  };
}

import type { Edge, Job } from '../../job/job.ts';
import { BATCH } from '../../num/batch.ts';
import type { Columns } from '../columns.ts';

/** The strains of the wood since the first placing, a column each. */
export interface StrainColumns {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** One edge of the blank as in `EdgeShapes`, a column each of its four numbers. */
export interface EdgeColumns {
  readonly out: Float64Array;
  readonly slope: Float64Array;
  readonly curve: Float64Array;
  readonly span: Float64Array;
  /** Fills the columns; without strains as cut for the first placing. */
  readonly load: (draws: Float64Array, count: number, strains: StrainColumns | null) => void;
}

export function edgeColumns(job: Job, edge: Edge, columns: Columns): EdgeColumns {
  const { widthMm, heightMm, widthAtYMm, heightAtXMm } = job.blank;
  const alongX = edge === 'lower' || edge === 'upper';
  const lengthMm = alongX ? widthMm : heightMm;
  const crook = columns.of({ kind: 'crook', edge });
  const out = new Float64Array(BATCH);
  const slope = new Float64Array(BATCH);
  const curve = new Float64Array(BATCH);
  const span = new Float64Array(BATCH);
  const straight = straightOf(edge, { widthMm, heightMm, widthAtYMm, heightAtXMm }, columns);
  return {
    out,
    slope,
    curve,
    span,
    load: (draws, count, strains) => {
      straight(draws, count, strains, out, slope);
      if (strains === null) {
        for (let i = 0; i < count; i++) {
          curve[i] = (4 * draws[crook + i]!) / lengthMm;
          span[i] = lengthMm;
        }
        return;
      }
      const [lengthways, crossways] = alongX ? [strains.x, strains.y] : [strains.y, strains.x];
      for (let i = 0; i < count; i++) {
        const along = 1 + lengthways[i]!;
        const across = 1 + crossways[i]!;
        slope[i] = (slope[i]! * across) / along;
        curve[i] = ((4 * draws[crook + i]!) / lengthMm) * (across / (along * along));
        span[i] = lengthMm * along;
      }
    },
  };
}

type Blank = Pick<Job['blank'], 'widthMm' | 'heightMm' | 'widthAtYMm' | 'heightAtXMm'>;

type FillStraight = (
  draws: Float64Array,
  count: number,
  strains: StrainColumns | null,
  out: Float64Array,
  slope: Float64Array,
) => void;

/** The edge's line: how far it stands out, with its strain, and its slope before any. */
function straightOf(edge: Edge, blank: Blank, columns: Columns): FillStraight {
  if (edge === 'lower')
    return (_draws, count, _strains, out, slope) => {
      out.fill(0, 0, count);
      slope.fill(0, 0, count);
    };
  if (edge === 'upper') {
    const height = columns.of({ kind: 'height' });
    const taper = columns.of({ kind: 'taper', axis: 'y' });
    const { heightMm, heightAtXMm } = blank;
    return (draws, count, strains, out, slope) => {
      for (let i = 0; i < count; i++) {
        const tau = draws[taper + i]!;
        const strain = strains === null ? 0 : strains.y[i]!;
        out[i] = (draws[height + i]! - tau * heightAtXMm) * (1 + strain) + strain * heightMm;
        slope[i] = tau;
      }
    };
  }
  const square = columns.of({ kind: 'square' });
  if (edge === 'left')
    return (draws, count, _strains, out, slope) => {
      out.fill(0, 0, count);
      for (let i = 0; i < count; i++) slope[i] = -draws[square + i]!;
    };
  const width = columns.of({ kind: 'width' });
  const taper = columns.of({ kind: 'taper', axis: 'x' });
  const { widthMm, widthAtYMm } = blank;
  return (draws, count, strains, out, slope) => {
    for (let i = 0; i < count; i++) {
      const beta = draws[taper + i]!;
      const strain = strains === null ? 0 : strains.x[i]!;
      out[i] = (draws[width + i]! - beta * widthAtYMm) * (1 + strain) + strain * widthMm;
      slope[i] = draws[square + i]! + beta;
    }
  };
}

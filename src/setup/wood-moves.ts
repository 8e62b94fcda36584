import { limitsOf } from '../num/spread-of.ts';
import type { Job } from '../job/job.ts';
import type { Columns } from './columns.ts';

/** How much the blank has grown between its placings in the trial read last, as strains along X and Y. */
export interface Strains {
  readonly x: number;
  readonly y: number;
}

export interface WoodMoves extends Strains {
  readonly load: (draws: Float64Array, i: number) => void;
}

/** One change of moisture moves both ways at once, each by its own share; strains that are stated are each by itself. */
export function woodMoves(job: Job, columns: Columns): WoodMoves {
  const { movementX, movementY, movesTogether } = job.blank;
  if (!movesTogether) {
    const [atX, atY] = [
      columns.of({ kind: 'movement', axis: 'x' }),
      columns.of({ kind: 'movement', axis: 'y' }),
    ];
    const moves = {
      x: 0,
      y: 0,
      load: (draws: Float64Array, i: number) => {
        moves.x = draws[atX + i]!;
        moves.y = draws[atY + i]!;
      },
    };
    return moves;
  }
  const most = [movementX, movementY].map(({ distribution }) => limitsOf(distribution)[1]);
  const larger = Math.max(...most);
  const [perX, perY] = most.map((one) => (larger === 0 ? 0 : one / larger)) as [number, number];
  const at = columns.of({ kind: 'movement', axis: 'both' });
  const moves = {
    x: 0,
    y: 0,
    load: (draws: Float64Array, i: number) => {
      moves.x = perX * draws[at + i]!;
      moves.y = perY * draws[at + i]!;
    },
  };
  return moves;
}

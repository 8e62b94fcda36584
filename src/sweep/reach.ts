import type { Job } from '../job/job.ts';
import { boundsOf, type Bounds } from '../plane/measure.ts';
import type { Placing } from '../setup/placing.ts';
import { axisWays } from './axis.ts';
import type { Cuts } from './keep-clear.ts';
import { placedMoves } from './placed-moves.ts';

/** Where the cutter's axis goes in a placing, layout frame, and between which heights its tip, mm. */
export interface Reach {
  readonly box: Bounds;
  /** Only where it cuts, or, of features, everywhere. */
  readonly cuttingBox: Bounds;
  readonly lowMm: number;
  readonly highMm: number;
}

/** Null when nothing is cut in the placing. */
export function reachOf(job: Job, placing: Placing, cuts: Cuts): Reach | null {
  if (cuts.by === 'features') {
    const ways = axisWays(job, placing);
    if (ways.length === 0) return null;
    const box = boundsOf(ways.flatMap(({ outlines }) => outlines.flat()));
    const lowMm = Math.min(...ways.map(({ tipMm }) => tipMm));
    return { box, cuttingBox: box, lowMm, highMm: job.blank.thickMm };
  }
  const moves = placedMoves(job, placing, cuts.program, cuts.cutterOf);
  if (moves.length === 0) return null;
  const all = moves.flatMap(({ places }) => places);
  const cutting = moves
    .flatMap(({ kind, places }) => (kind === 'feed' ? places : []))
    .filter(({ z }) => z < job.blank.thickMm);
  const heights = (pick: (low: number, z: number) => number, start: number): number =>
    all.reduce((best, { z }) => pick(best, z), start);
  return {
    box: boundsOf(all),
    cuttingBox: boundsOf(cutting.length === 0 ? all : cutting),
    lowMm: heights(Math.min, Infinity),
    highMm: heights(Math.max, -Infinity),
  };
}

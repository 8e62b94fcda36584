import type { Edge, Job } from '../job/job.ts';
import { EDGE_INDEX } from './edges.ts';

const EDGES: readonly Edge[] = ['lower', 'upper', 'left', 'right'];

/**
 * Least distance from a landed outline, which `reach` tells of, to an edge of the blank (the least of four when none is named), mm: to
 * the edge's straight line at half thickness, without bumps. Source: registration.md rule 10.
 */
export function wallFinder(
  job: Job,
  to: Edge | null,
  shape: Float64Array,
  reach: (ux: number, uy: number) => number,
): () => number {
  const { widthMm, heightMm } = job.blank;
  const lines = (to === null ? EDGES : [to]).map((edge) => ({
    at: EDGE_INDEX[edge],
    alongX: edge === 'lower' || edge === 'upper',
    outward: edge === 'upper' || edge === 'right' ? 1 : -1,
    placeMm: edge === 'upper' ? heightMm : edge === 'right' ? widthMm : 0,
  }));
  return () => {
    let least = Infinity;
    for (const { at, alongX, outward, placeMm } of lines) {
      const slope = shape[at + 1]!;
      const length = Math.sqrt(1 + slope * slope);
      const out = outward / length;
      const along = -slope / length;
      const edge = (placeMm + shape[at]!) / length;
      const far = alongX ? reach(along, out) : reach(out, along);
      if (edge - far < least) least = edge - far;
    }
    return least;
  };
}

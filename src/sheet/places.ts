import type { Corner, Edge, Face, Job, StopsJob } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Placing, Side } from '../setup/placing.ts';
import { blankInLayout } from '../setup/place.ts';
import type { Placings } from '../sweep/clearances.ts';

/** The placing in which `face` is up. */
export function placingOf(placings: Placings, face: Face): Placing {
  return face === 'front' ? placings.frontUp : placings.backUp;
}

/** Where a place of the nominal blank lies on the machine in this placing. */
export function inLayout(job: Job, placing: Placing, at: Point<'blank'>): Point<'layout'> {
  return blankInLayout(job, placing.mirror, at);
}

/** The blank's edge that lies on this side of the rectangle. */
export function edgeOn(placing: Placing, side: Side): Edge {
  const swapX = placing.mirror === 'x';
  const swapY = placing.mirror === 'y';
  if (side === 'left') return swapX ? 'right' : 'left';
  if (side === 'right') return swapX ? 'left' : 'right';
  if (side === 'near') return swapY ? 'upper' : 'lower';
  return swapY ? 'lower' : 'upper';
}

/** The blank's corner that gets the pencilled M: where the marked edges meet, or else the first stop corner. */
export function markedCorner(job: StopsJob): Point<'blank'> {
  const marked = job.blank.marked;
  const corner = job.stops.corner.frontUp;
  const right = marked.includes('right') || (!marked.includes('left') && corner.endsWith('right'));
  const upper = marked.includes('upper') || (!marked.includes('lower') && corner.startsWith('far'));
  return { x: right ? job.blank.widthMm : 0, y: upper ? job.blank.heightMm : 0 };
}

/** On which corner of the rectangle a corner of the nominal blank lies. */
export function cornerAt(job: StopsJob, at: Point<'layout'>): Corner {
  const far = at.y > job.blank.heightMm / 2;
  const right = at.x > job.blank.widthMm / 2;
  if (far) return right ? 'far-right' : 'far-left';
  return right ? 'near-right' : 'near-left';
}

/** The corner across from this one. */
export function acrossFrom(corner: Corner): Corner {
  const far = corner.startsWith('far') ? 'near' : 'far';
  return corner.endsWith('left') ? `${far}-right` : `${far}-left`;
}

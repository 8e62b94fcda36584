import type { Corner, Edge, Face, Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Placing, Side } from '../setup/placing.ts';
import { blankInLayout } from '../setup/place.ts';
import type { Placings } from '../sweep/clearances.ts';
import { cornerIn, markOn } from './locating/piece.ts';
import { pieceOf } from '../sweep/piece.ts';

/** The placing in which `face` is up. */
export function placingOf(placings: Placings, face: Face): Placing {
  return face === 'front' ? placings.frontUp : placings.backUp;
}

/** Both, in the order of work. */
export function inOrder(job: Job, placings: Placings): readonly [Placing, Placing] {
  const { frontUp, backUp } = placings;
  return job.first === 'front' ? [frontUp, backUp] : [backUp, frontUp];
}

/** Where a place of the nominal blank lies on the machine in this placing. */
export function inLayout(job: Job, placing: Placing, at: Point<'blank'>): Point<'layout'> {
  return blankInLayout(job, placing.mirror, at);
}

/** The blank's edge that lies on this side of it. */
export function edgeOn(placing: Placing, side: Side): Edge {
  const swapX = placing.mirror === 'x';
  const swapY = placing.mirror === 'y';
  if (side === 'left') return swapX ? 'right' : 'left';
  if (side === 'right') return swapX ? 'left' : 'right';
  if (side === 'near') return swapY ? 'upper' : 'lower';
  return swapY ? 'lower' : 'upper';
}

/** In which corner of what lies there the M is to be seen. */
export function markCorner(job: Job, placing: Placing): Corner {
  return cornerIn(pieceOf(job, placing), markOn(job, placing));
}

/** The corner across from this one. */
export function acrossFrom(corner: Corner): Corner {
  const far = corner.startsWith('far') ? 'near' : 'far';
  return corner.endsWith('left') ? `${far}-right` : `${far}-left`;
}

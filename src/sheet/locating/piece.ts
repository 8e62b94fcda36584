import type { Corner, Job } from '../../job/job.ts';
import type { Point } from '../../plane/point.ts';
import { blankInLayout, frontUpCorner } from '../../setup/place.ts';
import type { Placing } from '../../setup/placing.ts';
import { outlineOf } from '../../sweep/feature-outline.ts';
import { partOf, pieceOf, type Piece } from '../../sweep/piece.ts';

/** Far finer than where a hand lays, mm. */
const CHORD_MM = 0.1;

/** The blank's corner nearest to the pencilled M: where the marked edges meet, or else the first stop corner. */
export function markedCorner(job: Job): Point<'blank'> {
  const marked = job.blank.marked;
  const corner = frontUpCorner(job);
  const right = marked.includes('right') || (!marked.includes('left') && corner.endsWith('right'));
  const upper = marked.includes('upper') || (!marked.includes('lower') && corner.startsWith('far'));
  return { x: right ? job.blank.widthMm : 0, y: upper ? job.blank.heightMm : 0 };
}

/** Where the M is written, inwards of this place: the blank's corner, or the place of the part nearest to it. */
export function markedPlace(job: Job): Point<'blank'> {
  const corner = markedCorner(job);
  const feature = partOf(job);
  if (feature === null) return corner;
  const away = ({ x, y }: Point<'blank'>): number => Math.hypot(x - corner.x, y - corner.y);
  return outlineOf(feature, CHORD_MM).reduce((near, at) => (away(at) < away(near) ? at : near));
}

/** The place of the piece that shows where it lies, in the layout: what the cutter is jogged over. */
export function markOn(job: Job, placing: Placing): Point<'layout'> {
  const { name } = pieceOf(job, placing);
  const at = name === 'part' ? markedPlace(job) : markedCorner(job);
  return blankInLayout(job, placing.mirror, at);
}

/** In which corner of the piece a place lies. */
export function cornerIn({ box }: Piece, at: Point<'layout'>): Corner {
  const far = at.y > (box.lowY + box.highY) / 2;
  const right = at.x > (box.lowX + box.highX) / 2;
  if (far) return right ? 'far-right' : 'far-left';
  return right ? 'near-right' : 'near-left';
}

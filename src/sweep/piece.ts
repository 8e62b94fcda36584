import type { Feature, Job } from '../job/job.ts';
import { boundsOf, type Bounds } from '../plane/measure.ts';
import { mapped } from '../plane/move.ts';
import type { Outline } from '../plane/outline.ts';
import { blankInLayout } from '../setup/place.ts';
import type { Placing } from '../setup/placing.ts';
import { outlineOf } from './feature-outline.ts';

/** What lies on the bed in a placing: the blank, or the part that the first placing cut free of it. */
export interface Piece {
  readonly name: 'blank' | 'part';
  readonly outline: Outline<'layout'>;
  readonly box: Bounds;
}

/** Far finer than where a hand lays, mm. */
const CHORD_MM = 0.1;

export function pieceOf(job: Job, placing: Placing): Piece {
  const feature = partOf(job);
  if (feature === null || placing.order === 'first') return blankOf(job, placing);
  const outline = mapped<'blank', 'layout'>(
    outlineOf(feature, CHORD_MM),
    (at) => blankInLayout(job, placing.mirror, at),
    placing.mirror === 'none',
  );
  return { name: 'part', outline, box: boundsOf(outline) };
}

/** The outline along which the part is cut free that drops into a nest; null: the blank stays whole. */
export function partOf(job: Job): Feature | null {
  if (job.locating !== 'nest' || job.nest.around === null) return null;
  return job.features.find(({ name }) => name === job.nest.around) ?? null;
}

function blankOf(job: Job, { lies }: Placing): Piece {
  const [lowX, lowY] = [lies.x, lies.y];
  const [highX, highY] = [lowX + job.blank.widthMm, lowY + job.blank.heightMm];
  const outline = [
    { x: lowX, y: lowY },
    { x: highX, y: lowY },
    { x: highX, y: highY },
    { x: lowX, y: highY },
  ];
  return { name: 'blank', outline, box: { lowX, lowY, highX, highY } };
}

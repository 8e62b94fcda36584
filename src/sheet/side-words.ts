import type { Job } from '../job/job.ts';
import type { Placing, Side } from '../setup/placing.ts';
import { pieceOf } from '../sweep/piece.ts';
import type { Located } from './locating/way.ts';
import { edgeOn } from './places.ts';

/** What is to be known about one side of what lies there, in short pieces. */
export function sideWords(
  job: Job,
  placing: Placing,
  located: Located,
  side: Side,
): readonly string[] {
  const edge = edgeOn(placing, side);
  if (pieceOf(job, placing).name === 'part') return [`${edge} side`, ...located.sideWords(side)];
  return [
    `${edge} edge`,
    ...(job.blank.marked.includes(edge) ? ['MARKED'] : []),
    ...located.sideWords(side),
  ];
}

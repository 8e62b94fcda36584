import type { StopsJob } from '../job/job.ts';
import type { Placing, Side } from '../setup/placing.ts';
import { edgeOn } from './places.ts';

/** What is to be known about one side of the laid blank, in short pieces. */
export function sideWords(job: StopsJob, placing: Placing, side: Side): string[] {
  const edge = edgeOn(placing, side);
  return [
    `${edge} edge`,
    ...(job.blank.marked.includes(edge) ? ['MARKED'] : []),
    ...(placing.base.side === side ? ['against the fence'] : []),
    ...(placing.end.side === side ? [`against ${sideStopName(job, placing)}`] : []),
  ];
}

/** `the side stop`, or which of two. */
export function sideStopName(job: StopsJob, placing: Placing): string {
  const { frontUp, backUp } = job.stops.corner;
  return frontUp === backUp ? 'the side stop' : `the ${placing.sideStop} side stop`;
}

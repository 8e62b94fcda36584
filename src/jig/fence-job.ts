import type { Job, StopsJob } from '../job/job.ts';
import { frontUpCorner } from '../setup/place.ts';

/** A job on a fence and a dowel, seen by those who make stops: a fence, and no side stop. Others: null. */
export function fenceAlone(job: Job): StopsJob | null {
  if (job.locating !== 'fence-and-dowel') return null;
  const { fence, fenceTouch, band, made, seatGap, give } = job.fenceAndDowel;
  const corner = frontUpCorner(job);
  return {
    ...job,
    locating: 'stops',
    stops: {
      corner: { frontUp: corner, backUp: corner },
      sideTouch: { kind: 'buttons', atMm: [] },
      fence,
      fenceTouch,
      band,
      made,
      seatGap,
      give,
    },
  };
}

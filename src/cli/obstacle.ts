import type { Hindrance, Obstacle } from '../advise/variant.ts';
import type { Edit } from '../job/edit.ts';
import type { Job, StopsJob } from '../job/job.ts';
import { stopsOf } from '../jig/stops.ts';
import { touchClashText, touchRoom, type TouchClash } from '../jig/touch-room.ts';
import { placingsOf } from '../setup/place.ts';
import { bedTrouble } from '../sheet/locating/bed-trouble.ts';

/** Where else on the bed it is tried when dowels run into inserts, mm along X. */
const SHIFT_MM = 10;

/** Why a job that reads well cannot be made: no stop can stand there, the cutter would strike it, a touch has no room. */
export const obstacleOf: Obstacle = (job) =>
  job.locating === 'stops' ? stopsHindrance(job) : bedHindrance(job);

function stopsHindrance(job: StopsJob): Hindrance | null {
  const placings = placingsOf(job);
  const stops = stopsOf(job, placings);
  if (stops.kind === 'cannot')
    return {
      because: `no stop can be made: ${stops.because}; what would fit: ${stops.wouldFit}`,
      // Left out, the place on the bed is chosen by where the inserts are.
      instead: job.onBed.origin.kind === 'stated' ? [{ path: ['on-bed'], value: null }] : [],
    };
  const clash = touchRoom(job, placings, stops.parts)[0];
  return clash === undefined
    ? null
    : { because: touchClashText(clash), instead: touchedElsewhere(job, clash) };
}

/** The nearest place along the edge that has room. */
function touchedElsewhere(job: StopsJob, clash: TouchClash): readonly Edit[] {
  const { placing, along, at, free } = clash;
  if (free === null || at.kind === 'anywhere') return [];
  const { xy } = placing === 'front-up' ? job.zero.frontUp : job.zero.backUp;
  const was = 'at' in xy && xy.at !== null ? xy.at : middleOf(job);
  const mm = at.alongMm < free.fromMm ? free.fromMm : free.toMm;
  const now = { ...was, [along]: mm };
  return [{ path: ['zero', placing, 'xy-touched'], value: [now.x, now.y] }];
}

const middleOf = ({ blank }: Job) => ({ x: blank.widthMm / 2, y: blank.heightMm / 2 });

function bedHindrance(job: Exclude<Job, StopsJob>): Hindrance | null {
  const because = bedTrouble(job)[0];
  if (because === undefined) return null;
  const { x, y } = job.onBed.value;
  const isInsert = because.includes('insert');
  return {
    because,
    instead: isInsert ? [{ path: ['on-bed'], value: [x + SHIFT_MM, y + SHIFT_MM] }] : [],
  };
}

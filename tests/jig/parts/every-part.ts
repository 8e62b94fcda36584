import type { JigPart } from '../../../src/jig/parts/part.ts';
import { partsOf } from '../../../src/jig/parts/parts-of.ts';
import { defaultJigSizes as sizes } from '../../../src/job/jig-sizes.ts';
import type { Job } from '../../../src/job/job.ts';
import { placingsOf } from '../../../src/setup/place.ts';
import { aJob, flat6, placed } from '../a-job.ts';
import { madeOf, partsOf as stopsOf } from '../program/some-programs.ts';

const job = aJob();

/** The same blank in a nest of its own size and 0.2. */
export const nested: Job = {
  ...job,
  locating: 'nest',
  nest: {
    around: null,
    clearance: { ...job.stops.seatGap, distribution: { kind: 'exactly', value: 0.2 } },
    cutter: flat6,
    wallMm: 10,
    takeUp: 'left',
    seatGap: job.stops.seatGap,
    laid: job.stops.seatGap,
  },
};

/** Each part once, of default sizes, or nearly. */
export function everyPart(): readonly JigPart[] {
  const jig = {
    'dowel-board': sizes('dowel-board'),
    'drill-guide': sizes('drill-guide'),
    'strap-clamp': sizes('strap-clamp'),
    'step-block': sizes('step-block'),
    'toe-clamp': sizes('toe-clamp'),
    'cam-clamp': { ...sizes('cam-clamp'), thick: 9 },
    'cam-base': sizes('cam-base'),
    'wedge-pair': sizes('wedge-pair'),
    'shim-pads': sizes('shim-pads'),
  };
  const pinned = stopsOf(aJob({ made: 'on-bed-pins' }));
  return [
    ...madeOf(partsOf({ ...job, jig }, placed(job), pinned)),
    ...madeOf(
      partsOf({ ...nested, jig: { 'nest-frame': sizes('nest-frame') } }, placingsOf(nested), []),
    ),
  ];
}

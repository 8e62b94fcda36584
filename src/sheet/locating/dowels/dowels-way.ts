import type { Job } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Placings } from '../../../sweep/clearances.ts';
import { markup } from '../../html.ts';
import { layFreely } from '../freely.ts';
import { pushedSide } from '../take-up.ts';
import type { Located, Way } from '../way.ts';
import { dowelCautions, dowelLines, dowelThings } from './dowel-key.ts';
import { dowelDrawing, dowelLabels, dowelMarks, dowelReach, dowelSketch } from './dowel-drawing.ts';
import { layOnDowels } from './dowel-laying.ts';
import { drillApart, haveDowels, tapIn } from './dowel-making.ts';
import { areStanding, dowelSet, type DowelSet } from './dowel-set.ts';
import { drillWithBlank, lookUnder, nextBlank } from './drill-with-blank.ts';

/** Located by two to four dowels through holes in the blank. */
export function dowelsWay(job: Extract<Job, { locating: 'dowels' }>, placings: Placings): Way {
  const set = dowelSet(job, job.dowels, placings);
  return {
    heights: { title: 'Heights over the dowels', column: 'Dowel', tells: 'each dowel' },
    cautions: dowelCautions(set),
    prepare: [haveDowels(set)],
    cutters: [],
    key: {
      title: 'Dowels',
      things: dowelThings(set),
      lines: [...dowelLines(set), markup`<b>M</b>: the pencilled corner`],
      pictures: [],
    },
    turning: {
      before: job.dowels.drilled === 'with-the-blank' ? [tapIn(set)] : [],
      burrs: BURRS,
      after: [],
    },
    next: nextBlank(set),
    in: (placing) => onDowels(set, placing),
  };
}

/** A burr on a hole holds the blank up or off its dowel. */
export const BURRS = markup`Take the burrs off the edges of the blank and off both ends of its holes, by hand, burr only: a chamfer that is wider than the burr takes away what locates. Write each hole's number beside it on the other face too. Vacuum bed, dowels, holes and pockets.`;

function onDowels(set: DowelSet, placing: Placing): Located {
  const { job, holes } = set;
  const stand = areStanding(set, placing);
  const isFirst = placing.order === 'first';
  const isWith = holes.drilled === 'with-the-blank';
  return {
    making: !isFirst ? [] : isWith ? [lookUnder(set)] : drillApart(set, 'yet to be set'),
    laying: stand
      ? layOnDowels(set, placing)
      : layFreely(job, placing, holes.laid, 'for the drilling and for every cut of this face'),
    drilling: isFirst && isWith ? drillWithBlank(set) : [],
    passing: stand ? 'every dowel' : 'all that stands on the bed',
    landmark: {
      words: 'a marked place of the bed beside the blank',
      short: 'bed beside the blank',
    },
    floor: 'bed',
    hidesFloor: false,
    atEdges: 'at half its thickness',
    atMiddle: "at half the blank's thickness",
    lifting: stand ? 'lift the blank straight up off its dowels' : 'take the blank out',
    sideWords: (side) => (stand ? pushedSide(holes.takeUp, side) : []),
    reach: dowelReach(set),
    under: () => markup``,
    over: (field) => dowelDrawing(set, placing, field),
    marks: (field) => dowelMarks(set, field),
    labels: (field, taken) => dowelLabels(set, placing, field, taken),
    sketch: (plan) => dowelSketch(set, plan),
  };
}

import type { Job } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Placings } from '../../../sweep/clearances.ts';
import { joined, markup } from '../../html.ts';
import { lengthText } from '../../words.ts';
import { dowelCautions, dowelLines, dowelThings } from '../dowels/dowel-key.ts';
import {
  dowelDrawing,
  dowelLabels,
  dowelMarks,
  dowelReach,
  dowelSketch,
} from '../dowels/dowel-drawing.ts';
import { drillApart, haveDowels, tapIn } from '../dowels/dowel-making.ts';
import { areStanding, dowelSet, type DowelSet } from '../dowels/dowel-set.ts';
import { BURRS } from '../dowels/dowels-way.ts';
import { drillWithBlank, lookUnder, nextBlank } from '../dowels/drill-with-blank.ts';
import { fenceLine } from '../fence-line.ts';
import type { PrintedFence, SheetStop } from '../../sheet-input.ts';
import { stopBadges } from '../stops/stop-badges.ts';
import { contactDrawing, stopDrawing, stopMarks } from '../stops/stop-drawing.ts';
import { pushedSide } from '../take-up.ts';
import type { Located, Way } from '../way.ts';
import { fenceBar } from './fence-bar.ts';
import { layAtFence, layOnDowelAtFence } from './fence-laying.ts';
import { flattenDowel, haveFence, printFence, setFence } from './fence-making.ts';

export type FenceJob = Extract<Job, { locating: 'fence-and-dowel' }>;

/** Located by a fence, which gives the angle, and one dowel in a hole, which gives the place along it. */
export function fenceAndDowelWay(job: FenceJob, placings: Placings, printed?: PrintedFence): Way {
  const fence = job.fenceAndDowel;
  const set = dowelSet(job, fence.dowel, placings);
  const bar = printed?.stop ?? fenceBar(fence, placings);
  const isWith = fence.dowel.drilled === 'with-the-blank';
  return {
    heights: {
      title: 'Heights over the fence and the dowel',
      column: 'Fence or dowel',
      tells: 'the fence and the dowel',
    },
    cautions: dowelCautions(set),
    prepare: [
      printed === undefined ? haveFence(job, fence, bar) : printFence(printed),
      haveDowels(set),
      flattenDowel(job, placings),
    ],
    cutters: fence.made.kind === 'milled-in-place' ? [fence.made.cutter] : [],
    key: {
      title: 'Fence and dowel',
      things: [
        markup`<b class="letter">A</b>fence: ${lengthText(bar.body.highMm, job.shop.units)} high, in both placings`,
        ...dowelThings(set),
      ],
      lines: [
        markup`<b>Black wedge</b>: here the blank touches the fence`,
        ...dowelLines(set),
        markup`<b>M</b>: the pencilled corner`,
      ],
      pictures:
        printed === undefined
          ? []
          : [markup`<figure><figcaption>A</figcaption>${{ html: printed.picture }}</figure>`],
    },
    turning: { before: isWith ? [tapIn(set)] : [], burrs: BURRS, after: [] },
    next: nextBlank(set),
    in: (placing) => atFence(job, set, bar, placing),
  };
}

function atFence(job: FenceJob, set: DowelSet, bar: SheetStop, placing: Placing): Located {
  const { dowel } = job.fenceAndDowel;
  const isFirst = placing.order === 'first';
  const isWith = dowel.drilled === 'with-the-blank';
  const stand = areStanding(set, placing);
  const isMilled = job.fenceAndDowel.made.kind === 'milled-in-place';
  const drilling = isWith
    ? [lookUnder(set)]
    : drillApart(set, isMilled ? 'that of milling the fence' : 'yet to be set');
  return {
    making: isFirst ? [...setFence(job, job.fenceAndDowel, bar, placing), ...drilling] : [],
    laying: stand ? layOnDowelAtFence(set, placing) : layAtFence(set, placing),
    drilling: isFirst && isWith ? drillWithBlank(set) : [],
    passing: stand ? 'the fence, the dowel' : 'the fence',
    landmark: { words: 'the top of the fence', short: 'top of the fence' },
    floor: 'bed',
    hidesFloor: false,
    atEdges: 'at half its thickness, beside the contacts of the fence',
    atMiddle: "at half the blank's thickness, beside the contacts of the fence",
    lifting: stand ? 'lift the blank straight up off its dowel' : 'take the blank out',
    sideWords: (side) => [
      ...(placing.base.side === side ? ['against the fence'] : []),
      ...(stand ? pushedSide(dowel.takeUp, side) : []),
    ],
    reach: [...dowelReach(set), ...bar.body.outline],
    under: (field) => stopDrawing([bar], placing, field, `hatch-${placing.faceUp}`),
    over: (field) =>
      joined([
        ...placing.contacts.map((contact) => contactDrawing(contact, placing, field)),
        dowelDrawing(set, placing, field),
      ]),
    marks: (field) => [...stopMarks([bar], placing, field), ...dowelMarks(set, field)],
    labels: (field, taken) => {
      const letters = stopBadges([bar], field, taken);
      const numbers = dowelLabels(set, placing, field, letters.taken);
      return { html: joined([letters.html, numbers.html]), taken: numbers.taken };
    },
    sketch: (plan) => joined([fenceLine(placing.base.side, plan.box), dowelSketch(set, plan)]),
  };
}

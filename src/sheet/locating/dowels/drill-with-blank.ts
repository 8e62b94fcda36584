import { frontUpCorner } from '../../../setup/place.ts';
import { markup } from '../../html.ts';
import { xyWords } from '../../place-words.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { lengthText, unitText } from '../../words.ts';
import { drillWords } from './dowel-making.ts';
import type { DowelSet } from './dowel-set.ts';
import { dowelTable } from './dowel-table.ts';

/** Before the blank is laid: nothing hard may be where the drill will come out of it. */
export function lookUnder({ job, dowels }: DowelSet): Step {
  const places = dowels.map(({ onBed }) => xyWords(job, onBed)).join('; ');
  return step(
    markup`Look at the bed where the ${dowels.length === 1 ? 'hole comes' : 'holes come'}, at ${places} from its near-left corner: <b>no insert, screw, nail or slot within a finger's breadth</b>, and sound board below. If there is one, lay the blank elsewhere: write another place for its ${frontUpCorner(job)} corner under <b>on-bed</b> in the job and build again.`,
  );
}

/** Through blank and bed in the clamping of the first placing, before any cut. */
export function drillWithBlank(set: DowelSet): Step[] {
  const { job, dowels, sizes } = set;
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const deepMm = job.blank.thickMm + sizes.inBedMm;
  const many = dowels.length !== 1;
  return [
    step(
      markup`<b>Drill ${many ? 'the holes' : 'the hole'} now, before any cut:</b> ${drillWords(set, markup`at the places of the table, right through the blank`)}: ${size(deepMm)} in all below the blank's top. Set Z for the drill on the blank's top face; to a tenth of its depth is near enough. ${dowelTable(job, dowels, set.order)} <b>Do not loosen a clamp, and do not touch X and Y zero, from the first hole until every cut of this face is made:</b> holes, bed and cuts belong together.`,
    ),
    step(
      markup`Write its number beside each hole on the face that is up, draw the chips off, and put the first cutter back in.`,
      { label: many ? 'depth of hole 1' : 'depth of the hole', unit: unitText(job.shop.units) },
    ),
    ...again(set),
  ];
}

/** A second hole a little off the first is a slot, and holds no dowel. */
function again({ job }: DowelSet): Step[] {
  if (job.parts.count === 1) return [];
  return [
    step(
      markup`For each of the ${job.parts.count} blanks the bed is drilled anew, and a hole a little off an old one holds no dowel. Before the next blank is laid, pull the dowels and screw a fresh piece of board where the holes were, level with the bed, or move the whole job on the bed.`,
    ),
  ];
}

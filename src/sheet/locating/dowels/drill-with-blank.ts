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
      markup`<b>Drill ${many ? 'the holes' : 'the hole'} now, before any cut:</b> ${drillWords(set, markup`at the places of the table, right through the blank and ${size(sizes.inBedMm)} into the bed: ${size(deepMm)} in all below the blank's top`)} Set Z for the drill on the blank's top face; ${size(job.shop.units === 'inch' ? 0.508 : 0.5)} more or less does no harm. ${dowelTable(set)} <b>Do not loosen a clamp, and do not touch X and Y zero, from the first hole until every cut of this face is made:</b> holes, bed and cuts belong together.`,
    ),
    step(
      markup`Write its number beside ${many ? 'each hole' : 'the hole'} on the face that is up, draw the chips off, and put the first cutter back in.`,
      { label: many ? 'depth of hole 1' : 'depth of the hole', unit: unitText(job.shop.units) },
    ),
  ];
}

/** A second hole a little off the first is a slot, and holds no dowel. */
export function nextBlank({ job, holes }: DowelSet): Step[] {
  if (job.parts.count === 1 || holes.drilled === 'separately') return [];
  return [
    step(
      markup`<b>Before the next of the ${job.parts.count} blanks:</b> the bed is drilled anew for each of them, and a hole a little off an old one holds no dowel. Pull the dowels and let in a fresh piece of board where the holes were, level with the bed; or lay the next blank elsewhere.`,
    ),
  ];
}

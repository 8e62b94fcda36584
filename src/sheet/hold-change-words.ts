import type { Change } from '../hold/change.ts';
import { unreachable } from '../num/invariant.ts';
import type { Job } from '../job/job.ts';
import { lengthText } from './words.ts';

/** What a person does to make a change, with its key of the files where it has one. */
export function changeWords(job: Job, change: Change): string {
  const { units } = job.shop;
  const mm = (length: number): string => lengthText(length, units);
  switch (change.kind) {
    case 'moved-on-bed':
      return `lay the blank elsewhere on the bed (on-bed: [${bare(job, change.to.x)}, ${bare(job, change.to.y)}])`;
    case 'no-shoe':
      return 'cut without the dust shoe, and draw the dust off by hand with the spindle still';
    case 'shoe-higher':
      return `hang the dust shoe ${mm(change.byMm)} higher`;
    case 'cutter-further-out':
      return `let the cutter stand ${mm(change.byMm)} further out of the collet, if its maker allows`;
    case 'straps-lower':
      return `use straps ${mm(change.byMm)} lower`;
    case 'slots-longer':
      return `use straps with slots ${mm(change.byMm)} longer`;
    case 'filler':
      return 'lay a filler, level with the face, in the pockets that are underneath (hold: filler: yes)';
    case 'tighter':
      return `tighten the bolts ${change.share} times as much, with a hard block under each pad, if the inserts bear it`;
    case 'shallower-passes':
      return `cut in passes ${Math.round(change.share * 100)} % as deep (step of the cutter)`;
    case 'screws': {
      const places = change.at.map(({ x, y }) => `[${bare(job, x)}, ${bare(job, y)}]`).join(', ');
      const kind = change.isNew
        ? ` of ${mm(change.screw.shankMm)} by ${mm(change.screw.lengthMm)}`
        : '';
      return `put ${change.at.length} screws${kind} through it where it is waste (hold: screws: [${places}]); they leave holes`;
    }
    case 'tabs': {
      const { count, widthMm, thickMm } = change.tabs;
      return `leave ${count} tabs on ${change.feature} (tabs: {count: ${count}, width: ${bare(job, widthMm)}, thick: ${bare(job, thickMm)}})`;
    }
    case 'skin':
      return `leave a skin of ${mm(change.thickMm)} under ${change.feature} and cut it by hand`;
    case 'cut-last':
      return `cut ${change.feature} last in its placing`;
    case 'both': {
      const [one, other] = change.changes;
      return `${changeWords(job, one)}, and ${changeWords(job, other)}`;
    }
    default:
      return unreachable(change);
  }
}

/** A length as it stands in a file of the shop's units. */
const bare = (job: Job, mm: number): string =>
  job.shop.units === 'inch' ? `${(mm / 25.4).toFixed(3)} in` : String(Math.round(mm * 10) / 10);

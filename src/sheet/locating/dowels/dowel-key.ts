import type { Html } from '../../html.ts';
import { markup } from '../../html.ts';
import { lengthText } from '../../words.ts';
import { holeOver, insertClashes } from './dowel-places.ts';
import { xyWords } from '../../place-words.ts';
import type { DowelSet } from './dowel-set.ts';

/** One line a dowel: size, height, the hole that drops onto it after the turn. */
export function dowelThings({ job, holes, dowels, sizes, order }: DowelSet): readonly Html[] {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  return dowels.map(
    (dowel) =>
      markup`<b class="letter">${dowel.number}</b>dowel ${dowel.number}: ${size(holes.diameterMm)} thick, stands ${size(sizes.standsMm)} above the bed; in the second placing hole ${holeOver(job, dowels, dowel, order[1])} is over it`,
  );
}

export function dowelLines({ holes }: DowelSet): readonly Html[] {
  const disc = markup`<b>Black disc in a ring</b>: a dowel in its hole; <b>hole 2 on 1</b>: hole 2 lies over dowel 1`;
  return holes.drilled === 'separately'
    ? [disc]
    : [markup`<b>Crossed ring</b>: drill here, through blank and bed`, disc];
}

/** What can hurt or spoil about drilling for dowels and having them stand there. */
export function dowelCautions(set: DowelSet): readonly Html[] {
  const { job, holes, dowels, sizes } = set;
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const isWith = holes.drilled === 'with-the-blank';
  const clashes = insertClashes(job, dowels, holes.diameterMm).map(
    ({ dowel, insert }) =>
      markup`<b>Do not drill as it stands:</b> hole ${dowel.number} in the bed, at ${xyWords(job, dowel.onBed)}, runs into the metal insert at ${xyWords(job, insert)} from the bed's near-left corner. Write another place under on-bed in the job and build again.`,
  );
  const thin = sizes.fitsBed
    ? []
    : [
        markup`<b>The spoilboard is only ${size(job.shop.bed.spoilboard.thickMm)} thick</b>, and the holes go ${size(sizes.inBedMm)} into it: put a board under it or on it, so that no drill meets the machine.`,
      ];
  return [
    ...clashes,
    ...thin,
    markup`<b>You drill into the bed:</b> metal below breaks the drill and throws the pieces. A long thin drill bends and breaks when it is turned too fast or does not clear its chips.`,
    markup`<b>Dowels stand up from the bed</b>${isWith ? ' in the second placing' : ''}, ${size(sizes.standsMm)} high: a cutter that meets one breaks. Never force the blank onto them, and keep fingers out from under it.`,
  ];
}

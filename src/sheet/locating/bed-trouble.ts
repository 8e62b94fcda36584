import { placingsOf } from '../../setup/place.ts';
import { dowelHolesIn } from '../../job/located.ts';
import { strikes } from '../heights-table.ts';
import { xyWords } from '../place-words.ts';
import type { BedInput } from '../sheet-input.ts';
import { lengthText } from '../words.ts';
import { dowelsOf, insertClashes } from './dowels/dowel-places.ts';
import { clearancesInBed } from './way-of.ts';

/** Why what locates the blank cannot stand there as the job has it, a sentence each; none when it can. */
export function bedTrouble(job: BedInput['job']): readonly string[] {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const holes = dowelHolesIn(job);
  const clashes = holes === null ? [] : insertClashes(job, dowelsOf(job, holes), holes.diameterMm);
  return [
    ...clashes.map(
      ({ dowel, insert }) =>
        `hole ${dowel.number} in the bed runs into the metal insert at ${xyWords(job, insert)}: write another place under on-bed`,
    ),
    ...strikes(clearancesInBed(job, placingsOf(job))).map(
      ({ what, body, bodyTopMm, lowestMm, placing, feature }) =>
        `the ${what} passes ${size(bodyTopMm - (lowestMm ?? 0))} too low over ${body}, ${placing.replace('-', ' ')}${feature === null ? '' : `, while ${feature} is cut`}`,
    ),
  ];
}

import type { Clearance, DowelHoles, Units } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';
import { lengthText } from '../../words.ts';
import { writtenSpread } from '../../written-spread.ts';
import { holeOver } from './dowel-places.ts';
import type { DowelSet } from './dowel-set.ts';

/** `the 2 dowels`, `the dowel`. */
export function dowelsWords({ dowels }: DowelSet): string {
  return dowels.length === 1 ? 'the dowel' : `the ${dowels.length} dowels`;
}

/** `hole 2 over dowel 1, hole 1 over dowel 2`. */
export function overWords(set: DowelSet, placing: Placing): string {
  return set.dowels
    .map(
      (dowel) => `hole ${holeOver(set.job, set.dowels, dowel, placing)} over dowel ${dowel.number}`,
    )
    .join(', ');
}

/** How the holes are to fit: `a clearance of 0 mm..0.1 mm`. */
export function fitWords({ clearance, diameterMm }: DowelHoles, units: Units): string {
  const written = (text: string): string => writtenSpread(text, units);
  if (clearance.kind === 'stated')
    return `a clearance in diameter of ${written(clearance.spread.text)} was reckoned with`;
  const { pin, hole } = clearance;
  const size = lengthText(diameterMm, units);
  return pin.text === hole.text
    ? `a fit of ${size} ${pin.text} was reckoned with`
    : `dowels of ${sizeWords(pin, units)} in holes of ${sizeWords(hole, units)} were reckoned with`;
}

function sizeWords({ text }: Extract<Clearance, { kind: 'sizes' }>['pin'], units: Units): string {
  return writtenSpread(text, units);
}

import { circleOutline } from '../../../plane/outline.ts';
import { moved } from '../../../plane/move.ts';
import type { Standing } from '../standing.ts';
import { CHORD_MM } from './dowel-places.ts';
import type { DowelSet } from './dowel-set.ts';

/** The dowels as bodies on the bed. */
export function standingDowels({ dowels, holes, sizes, standing }: DowelSet): readonly Standing[] {
  const round = circleOutline<'layout'>(holes.diameterMm / 2, CHORD_MM);
  return dowels.map(({ number, stands }) => ({
    body: {
      name: `dowel ${number}`,
      outline: moved(round, stands),
      lowMm: 0,
      highMm: sizes.standsMm,
    },
    placings: standing.map(({ faceUp }) => faceUp),
  }));
}

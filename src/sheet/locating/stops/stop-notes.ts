import type { StopsJob } from '../../../job/job.ts';
import { unreachable } from '../../../num/invariant.ts';
import { boundsOf } from '../../../plane/measure.ts';
import { xyWords } from '../../place-words.ts';
import type { SheetStop } from '../../sheet-input.ts';
import { lengthText } from '../../words.ts';

/** What the person who prints and sets a stop has to know about it, one sentence each, in the shop's units. */
export function stopNotes(job: StopsJob, stop: SheetStop): readonly string[] {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const { lowX, lowY, highX, highY } = boundsOf(stop.body.outline);
  const longMm = Math.max(highX - lowX, highY - lowY);
  const proudMm = Math.max(0, ...stop.heads.map((head) => head.highMm - stop.body.highMm));
  return [
    'Print it base down, without support, solid round the screws.',
    ...(longMm > COMMON_PRINTER_MM
      ? [`It is ${size(longMm)} long: lay it across a small printer's bed, or check that it fits.`]
      : []),
    ...setting(job, stop),
    ...stop.screws
      .filter((screw) => screw.insert === null)
      .map(
        ({ onBed }) =>
          `The bed has no insert at ${xyWords(job, onBed)} from its near-left corner: put one in there, or drive a wood screw with a washer.`,
      ),
    ...(proudMm > 0 ? [`Its screw heads stand ${size(proudMm)} above its top.`] : []),
  ];
}

function setting(job: StopsJob, stop: SheetStop): readonly string[] {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const made = job.stops.made;
  switch (made.kind) {
    case 'set-by-hand': {
      const slots = stop.screws.flatMap(({ hole }) =>
        hole.kind === 'slot' ? [hole.travelMm] : [],
      );
      return slots.length === 0
        ? []
        : [
            `Square it by turning it about the screw in the round hole; the slots give ${size(Math.min(...slots))} either way.`,
          ];
    }
    case 'on-bed-pins':
      return stop.pins.length === 0
        ? []
        : [
            `Pin it through its ${size(stop.pins[0]!.diameterMm)} holes before tightening the screws.`,
          ];
    case 'milled-in-place':
      return stop.allowanceMm === 0
        ? []
        : [
            `Mill ${size(stop.allowanceMm)} off its faces where it stands, with ${made.cutter.name}.`,
          ];
    default:
      return unreachable(made);
  }
}

/** Beds of common small printers, mm. Common practice, no source. */
const COMMON_PRINTER_MM = 220;

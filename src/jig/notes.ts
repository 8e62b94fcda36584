import type { StopsJob } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import { mm } from './answer.ts';
import { cornerInLayout } from './corner-frame.ts';
import { layoutOnBed } from '../setup/place.ts';
import type { ScrewFit } from './screw-holes.ts';
import { stopNumbers } from './numbers.ts';
import { isBar } from './pieces.ts';
import { pinNotes } from './steel-buttons.ts';
import type { StandingPiece } from './standing.ts';
import type { StopHeights } from './stop-heights.ts';

/** What the person who prints and sets the stop has to know about it, one sentence each. */
export function notesOn(
  job: StopsJob,
  one: StandingPiece,
  heights: StopHeights,
  fit: ScrewFit,
): readonly string[] {
  const longMm = Math.max(
    one.size.fenceArmMm + one.size.sideDepthMm,
    one.size.sideArmMm + one.size.fenceDepthMm,
  );
  return [
    'Print it base down, without support, solid round the screws.',
    ...(longMm > commonPrinterMm
      ? [`It is ${mm(longMm)} long: lay it across a small printer's bed, or check that it fits.`]
      : []),
    setting(job, heights, fit),
    ...(isBar(one.piece)
      ? [
          `Where a zero is touched on the edge at this fence, touch it above the fence: that is ${mm(heights.topMm)} high, the blank ${mm(job.blank.thickMm)} thick.`,
        ]
      : []),
    ...pinNotes(one.piece, heights.band.highMm),
    ...one.seats
      .filter((seat) => seat.insert === null)
      .map((seat) => {
        const { x, y } = layoutOnBed(job, cornerInLayout(one.piece.frame, seat.at));
        const at = `[${x.toFixed(1)}, ${y.toFixed(1)}] mm`;
        return `The bed has no insert at ${at}: put one in there, or drive a wood screw with a washer.`;
      }),
    ...(fit.headProudMm > 0 ? [`Its screw heads stand ${mm(fit.headProudMm)} above its top.`] : []),
  ];
}

function setting(job: StopsJob, heights: StopHeights, fit: ScrewFit): string {
  const made = job.stops.made;
  switch (made.kind) {
    case 'set-by-hand':
      return `Square it by turning it about the screw in the round hole; the slots give ${mm(fit.travelMm)} either way.`;
    case 'on-bed-pins':
      return `Pin it through its ${stopNumbers.pinDiameterMm} mm holes before tightening the screws.`;
    case 'milled-in-place':
      return `Mill ${mm(heights.allowanceMm)} off its faces where it stands, with ${made.cutter.name}.`;
    default:
      return unreachable(made);
  }
}

/** Beds of common small printers, mm. Common practice, no source. */
const commonPrinterMm = 220;

import type { StopsJob } from '../job/job.ts';
import { cannot, figure, mm, type Cannot } from './answer.ts';
import type { BoredHole } from './bored-hole.ts';
import type { Seat } from './layout-of-screws.ts';
import { stopNumbers } from './numbers.ts';
import { given, unmet } from './parts/size.ts';
import type { Piece } from './pieces.ts';

/** A groove holds its pin when the pin's middle lies this far behind the body's face. Our own choice, mm. */
const BEHIND_FACE_MM = 2;
/** Thicker pins want a stop that is mostly groove, mm. Common practice, no source. */
const THICKEST_MM = 20;

/** Why the steel pins that a job asks for cannot touch its blank, or null. */
export function noSteelButtons({ jig, stops, blank }: StopsJob): Cannot | null {
  const wish = jig['steel-buttons'];
  if (wish === undefined) return null;
  const touches = [stops.fenceTouch, stops.sideTouch];
  if (touches.some(({ kind }) => kind === 'arm'))
    return cannot(
      'steel-buttons: an arm touches along its whole length, which no pin does',
      `fence-touch and side-touch as places of buttons, such as [30, ${figure(blank.widthMm - 30)}]`,
    );
  if (stops.band.kind === 'narrow')
    return cannot(
      'steel-buttons: a pin touches over its whole height, and touch-height asks for a narrow band',
      `height: ${figure(stops.band.touchHeightMm + stopNumbers.bandHalfMm)} instead of touch-height`,
    );
  if (stops.made.kind === 'milled-in-place')
    return cannot(
      'steel-buttons: faces of steel are not milled in place',
      'made: set-by-hand or on-bed-pins under stops, or printed buttons',
    );
  return unmet('steel-buttons', [
    {
      what: 'diameter',
      isMm: given(wish.diameter),
      least: 2 * (stopNumbers.betweenBackMm + BEHIND_FACE_MM),
      most: THICKEST_MM,
      because: 'its groove would not hold it, or hardly anything but groove would be left',
    },
    {
      what: 'clearance',
      isMm: given(wish.clearance),
      least: 0.05,
      most: 0.4,
      because: 'the pin would not go in, or stand loose',
    },
  ]);
}

/** How far behind the contact line a piece is taken up by pins, mm. */
export const pinsDeepMm = ({ buttons }: Pick<Piece, 'buttons'>): number =>
  buttons === null ? 0 : buttons.diameterMm;

/** Seats whose walls do not run into a groove. */
export function clearOfPins(
  piece: Piece,
  seats: readonly Seat[],
  marginMm: number,
): readonly Seat[] {
  return seats.filter(({ at }) =>
    grooveHoles(piece).every(
      (pin) => Math.hypot(at.x - pin.at.x, at.y - pin.at.y) >= marginMm + pin.radiusMm,
    ),
  );
}

/** The grooves as round holes that others must keep clear of. */
export function grooveHoles({ buttons, fenceLands, sideLands }: Piece): readonly BoredHole[] {
  if (buttons === null) return [];
  const axisMm = -buttons.diameterMm / 2;
  const radiusMm = buttons.grooveMm / 2;
  return [
    ...fenceLands.map(({ fromMm, toMm }) => ({ x: (fromMm + toMm) / 2, y: axisMm })),
    ...sideLands.map(({ fromMm, toMm }) => ({ x: axisMm, y: (fromMm + toMm) / 2 })),
  ].map((at) => ({
    at,
    radiusMm,
    seatRadiusMm: radiusMm,
    seatDeepMm: 0,
    along: 'x',
    travelMm: 0,
  }));
}

/** What the person who presses the pins in has to know. */
export const pinNotes = ({ buttons }: Piece, highMm: number): readonly string[] =>
  buttons === null
    ? []
    : [
        `Press a steel pin of ${mm(buttons.diameterMm)}, ${mm(highMm)} long, into each groove, down to the bed: it touches instead of a printed face. Break its edges: a sharp end scratches.`,
      ];

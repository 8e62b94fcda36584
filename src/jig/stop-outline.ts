import { arc, chordCount, type Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { stopNumbers } from './numbers.ts';
import { isBar, type Piece, type Reach, type SteelButtons } from './pieces.ts';
import type { PieceSize } from './layout-of-screws.ts';

type Place = Point<'corner'>;

/** How a piece's outline differs from one height to another, mm. */
export interface AtHeight {
  /** How far the lands stand towards the blank from the contact line. */
  readonly landMm: number;
  /** How much narrower they are at each end than their flanks would make them. */
  readonly narrowedMm: number;
  /** How far the outside is drawn in. */
  readonly drawnInMm: number;
  /** Whether steel pins stand in their grooves. */
  readonly pins: 'in' | 'out';
}

/** Where the final faces are, and the outside is full. */
export const finalFaces: AtHeight = { landMm: 0, narrowedMm: 0, drawnInMm: 0, pins: 'in' };

/** The outline of a piece at one height, counter-clockwise: the same vertices in the same order at all. */
export function stopOutline(piece: Piece, size: PieceSize, here: AtHeight): Outline<'corner'> {
  const back = stopNumbers.betweenBackMm;
  const r = stopNumbers.outerRadiusMm;
  const left = -size.sideDepthMm;
  const low = -size.fenceDepthMm;
  const { fenceArmMm } = size;
  const tight = r - here.drawnInMm;
  const places = (land: Reach): Place[] =>
    piece.buttons === null ? landPlaces(land, here) : pinPlaces(land, piece.buttons, here);
  const fence = [
    ...rounding(left + r, low + r, tight, tight, 2),
    ...rounding(fenceArmMm - r, low + r, tight, tight, 3),
    ...rounding(fenceArmMm - r, -back - r, tight, r, 0),
    ...piece.fenceLands.toReversed().flatMap((land) => places(land).toReversed()),
    ...(isBar(piece) ? rounding(left + r, -back - r, r, tight, 1) : []),
  ];
  return isBar(piece) ? fence : [...fence, ...sideOf(piece, size, here, places)];
}

/** The inside corner and the arm along the side stop. */
function sideOf(
  piece: Piece,
  size: PieceSize,
  here: AtHeight,
  places: (land: Reach) => readonly Place[],
): Place[] {
  const back = stopNumbers.betweenBackMm;
  const r = stopNumbers.outerRadiusMm;
  const left = -size.sideDepthMm;
  const { sideArmMm } = size;
  const tight = r - here.drawnInMm;
  return [
    // Clockwise round the inside corner, through the body: three quarters of a circle.
    ...arc<'corner'>(-back, -back, size.notchRadiusMm, 0, -1.5 * Math.PI, stopNumbers.chordMm),
    ...piece.sideLands.flatMap((land) => places(land).map((p) => ({ x: p.y, y: p.x }))),
    ...rounding(-back - r, sideArmMm - r, r, tight, 0),
    ...rounding(left + r, sideArmMm - r, tight, tight, 1),
  ];
}

/** A land and its flanks, drawn as on the fence; the flanks run at 45 degrees through its ends. */
function landPlaces({ fromMm, toMm }: Reach, { landMm, narrowedMm }: AtHeight): Place[] {
  const back = stopNumbers.betweenBackMm;
  return [
    { x: fromMm - back, y: -back },
    { x: fromMm + landMm + narrowedMm, y: landMm },
    { x: toMm - landMm - narrowedMm, y: landMm },
    { x: toMm + back, y: -back },
  ];
}

/** A pin's groove, open towards the blank; with its pin in, what stands out of it. */
function pinPlaces(
  { fromMm, toMm }: Reach,
  { diameterMm, grooveMm }: SteelButtons,
  { pins }: AtHeight,
): Place[] {
  const middle = (fromMm + toMm) / 2;
  const radius = (pins === 'in' ? diameterMm : grooveMm) / 2;
  // Pin and groove touch at the bottom of the groove: there the blank presses the pin.
  const axis = radius - diameterMm;
  // Where the body's face, further back than the contact line, cuts the circle.
  const mouth = Math.asin((-stopNumbers.betweenBackMm - axis) / radius);
  const [start, end] = pins === 'in' ? [Math.PI - mouth, mouth] : [-Math.PI - mouth, mouth];
  const half = (from: number, to: number): Place[] =>
    arc<'corner'>(middle, axis, radius, from, to, stopNumbers.chordMm);
  // In two halves, so that a place stands right on the contact line, or right behind it.
  const turn = (start + end) / 2;
  return [...half(start, turn), ...half(turn, end).slice(1)];
}

function rounding(x: number, y: number, rx: number, ry: number, quarter: 0 | 1 | 2 | 3): Place[] {
  const steps = chordCount(stopNumbers.outerRadiusMm, stopNumbers.chordMm) / 4;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const turn = ((quarter + i / steps) * Math.PI) / 2;
    return { x: x + rx * Math.cos(turn), y: y + ry * Math.sin(turn) };
  });
}

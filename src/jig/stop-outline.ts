import { arc, chordCount, type Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { stopNumbers } from './numbers.ts';
import type { Piece, Reach } from './pieces.ts';
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
}

/** Where the final faces are, and the outside is full. */
export const finalFaces: AtHeight = { landMm: 0, narrowedMm: 0, drawnInMm: 0 };

/** The outline of a piece at one height, counter-clockwise: the same vertices in the same order at all. */
export function stopOutline(piece: Piece, size: PieceSize, here: AtHeight): Outline<'corner'> {
  const back = stopNumbers.betweenBackMm;
  const r = stopNumbers.outerRadiusMm;
  const left = -size.sideDepthMm;
  const low = -size.fenceDepthMm;
  const { fenceArmMm, sideArmMm } = size;
  const tight = r - here.drawnInMm;
  return [
    ...rounding(left + r, low + r, tight, tight, 2),
    ...rounding(fenceArmMm - r, low + r, tight, tight, 3),
    ...rounding(fenceArmMm - r, -back - r, tight, r, 0),
    ...piece.fenceLands.toReversed().flatMap((land) => landPlaces(land, here).toReversed()),
    // Clockwise round the inside corner, through the body: three quarters of a circle.
    ...arc<'corner'>(-back, -back, size.notchRadiusMm, 0, -1.5 * Math.PI, stopNumbers.chordMm),
    ...piece.sideLands.flatMap((land) => landPlaces(land, here).map((p) => ({ x: p.y, y: p.x }))),
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

function rounding(x: number, y: number, rx: number, ry: number, quarter: 0 | 1 | 2 | 3): Place[] {
  const steps = chordCount(stopNumbers.outerRadiusMm, stopNumbers.chordMm) / 4;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const turn = ((quarter + i / steps) * Math.PI) / 2;
    return { x: x + rx * Math.cos(turn), y: y + ry * Math.sin(turn) };
  });
}

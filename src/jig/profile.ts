import { outlineInLayout } from './corner-frame.ts';
import { holeOutline } from './hole-outline.ts';
import { heightsOf, valueAt, type Knots } from './knots.ts';
import type { Piece } from './pieces.ts';
import type { PieceSize } from './layout-of-screws.ts';
import type { BoredHole } from './bored-hole.ts';
import type { StopHeights } from './stop-heights.ts';
import { stopOutline } from './stop-outline.ts';
import type { Level, Profile } from './stop-part.ts';

/** The piece by height, as it is printed, layout frame. */
export function profileOf(
  piece: Piece,
  size: PieceSize,
  heights: StopHeights,
  holes: readonly BoredHole[],
): Profile {
  const radii = holes.map((hole): Knots => radiusKnots(hole, heights.topMm));
  const level = (zMm: number, from: 'below' | 'above'): Level => ({
    zMm,
    outline: outlineInLayout(
      piece.frame,
      stopOutline(piece, size, {
        landMm: valueAt(heights.lands, zMm, from),
        narrowedMm: valueAt(heights.narrowed, zMm, from),
        drawnInMm: valueAt(heights.drawnIn, zMm, from),
        pins: 'out',
      }),
    ),
    holes: holes.map((hole, i) =>
      outlineInLayout(
        piece.frame,
        holeOutline(
          { ...hole, radiusMm: valueAt(radii[i]!, zMm, from) },
          Math.max(hole.radiusMm, hole.seatRadiusMm),
        ),
      ).toReversed(),
    ),
  });
  const all = [heights.lands, heights.narrowed, heights.drawnIn, ...radii];
  const levels = heightsOf(all).flatMap((zMm) => {
    if (zMm === 0) return [level(zMm, 'above')];
    if (zMm === heights.topMm) return [level(zMm, 'below')];
    return all.some((k) => valueAt(k, zMm, 'below') !== valueAt(k, zMm, 'above'))
      ? [level(zMm, 'below'), level(zMm, 'above')]
      : [level(zMm, 'below')];
  });
  return { levels };
}

/** A hole's radius by height: two knots at one height are the floor of its seat. */
function radiusKnots(hole: BoredHole, topMm: number): Knots {
  const floorMm = topMm - hole.seatDeepMm;
  return hole.seatDeepMm === 0
    ? [
        { zMm: 0, value: hole.radiusMm },
        { zMm: topMm, value: hole.radiusMm },
      ]
    : [
        { zMm: 0, value: hole.radiusMm },
        { zMm: floorMm, value: hole.radiusMm },
        { zMm: floorMm, value: hole.seatRadiusMm },
        { zMm: topMm, value: hole.seatRadiusMm },
      ];
}

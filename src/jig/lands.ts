import type { Point } from '../plane/point.ts';
import { cornerInLayout } from './corner-frame.ts';
import type { Piece, Reach } from './pieces.ts';
import type { Land } from './stop-part.ts';

/** A pin touches along a line; a dent makes it as wide as this, mm: an estimate. */
const PIN_LAND_MM = 1;

const narrowed = (reach: Reach): Reach => {
  const middle = (reach.fromMm + reach.toMm) / 2;
  return { ...reach, fromMm: middle - PIN_LAND_MM / 2, toMm: middle + PIN_LAND_MM / 2 };
};

/** The flats of a piece that touch the blank, where they end up, layout frame. */
export function landsInLayout(piece: Piece): readonly Land[] {
  const land = (face: Land['face'], whole: Reach): Land => {
    const reach = piece.buttons === null ? whole : narrowed(whole);
    const end = (alongMm: number): Point<'layout'> =>
      cornerInLayout(piece.frame, face === 'fence' ? { x: alongMm, y: 0 } : { x: 0, y: alongMm });
    return { face, ends: [end(reach.fromMm), end(reach.toMm)], contacts: reach.contacts };
  };
  return [
    ...piece.fenceLands.map((reach) => land('fence', reach)),
    ...piece.sideLands.map((reach) => land('side', reach)),
  ];
}

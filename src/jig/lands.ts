import type { Point } from '../plane/point.ts';
import { cornerInLayout } from './corner-frame.ts';
import type { Piece, Reach } from './pieces.ts';
import type { Land } from './stop-part.ts';

/** The flats of a piece that touch the blank, where they end up, layout frame. */
export function landsInLayout(piece: Piece): readonly Land[] {
  const land = (face: Land['face'], reach: Reach): Land => {
    const end = (alongMm: number): Point<'layout'> =>
      cornerInLayout(piece.frame, face === 'fence' ? { x: alongMm, y: 0 } : { x: 0, y: alongMm });
    return { face, ends: [end(reach.fromMm), end(reach.toMm)], contacts: reach.contacts };
  };
  return [
    ...piece.fenceLands.map((reach) => land('fence', reach)),
    ...piece.sideLands.map((reach) => land('side', reach)),
  ];
}

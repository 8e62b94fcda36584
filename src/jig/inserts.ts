import type { StopsJob } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import { layoutInCorner } from './corner-frame.ts';
import { bedInLayout } from '../setup/place.ts';
import type { PieceSize, Seat } from './layout-of-screws.ts';
import { stopNumbers } from './numbers.ts';
import { isBar, type Piece } from './pieces.ts';
import { pinsDeepMm } from './steel-buttons.ts';

/**
 * Where screws can go, in a piece's frame: the bed's inserts, or, on a bed without any, three places
 * of our own: behind the corner and near the end of each arm.
 */
export function seatsFor(
  job: StopsJob,
  piece: Piece,
  size: PieceSize,
  marginMm: number,
): readonly Seat[] {
  const inserts = job.shop.bed.inserts;
  if (inserts === null) {
    const behind = -(Math.max(stopNumbers.betweenBackMm, pinsDeepMm(piece)) + marginMm);
    if (isBar(piece))
      return [marginMm - size.sideDepthMm, size.fenceArmMm - marginMm].map((x) => ({
        at: { x, y: behind },
        insert: null,
      }));
    return [
      { x: behind, y: behind },
      { x: size.fenceArmMm - marginMm, y: behind },
      { x: behind, y: size.sideArmMm - marginMm },
    ].map((at) => ({ at, insert: null }));
  }
  const { first, pitchMm, count } = inserts;
  return range(count.x).flatMap((column) =>
    range(count.y).map((row) => {
      const onBed: Point<'bed'> = { x: first.x + column * pitchMm.x, y: first.y + row * pitchMm.y };
      return { at: layoutInCorner(piece.frame, bedInLayout(job, onBed)), insert: { column, row } };
    }),
  );
}

const range = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);

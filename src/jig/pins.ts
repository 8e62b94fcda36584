import type { Point } from '../plane/point.ts';
import type { BoredHole } from './bored-hole.ts';
import { holds, type PieceSize } from './layout-of-screws.ts';
import { stopNumbers } from './numbers.ts';

/** Places for two steel pins in a piece, as far apart as screws and walls leave room; or none. */
export function pinPlaces(
  size: PieceSize,
  screws: readonly BoredHole[],
): readonly Point<'corner'>[] {
  const marginMm = stopNumbers.pinDiameterMm / 2 + stopNumbers.holeWallMm;
  const behind = (depthMm: number): number => -(stopNumbers.betweenBackMm + depthMm) / 2;
  const free = [
    ...steps(-size.sideDepthMm, size.fenceArmMm).map((x) => ({ x, y: behind(size.fenceDepthMm) })),
    ...steps(-size.fenceDepthMm, size.sideArmMm).map((y) => ({ x: behind(size.sideDepthMm), y })),
  ]
    .filter((at) => holds(size, at, marginMm))
    .filter((at) => screws.every((screw) => clearOf(screw, at)));
  let best: { readonly apartMm: number; readonly pair: readonly Point<'corner'>[] } = {
    apartMm: stopNumbers.screwsLeastApartMm,
    pair: [],
  };
  free.forEach((a, i) => {
    for (const b of free.slice(i + 1)) {
      const apartMm = Math.hypot(a.x - b.x, a.y - b.y);
      if (apartMm > best.apartMm) best = { apartMm, pair: [a, b] };
    }
  });
  return best.pair;
}

/** Past a screw's seat, with the wall of a thin rib. */
function clearOf(screw: BoredHole, at: Point<'corner'>): boolean {
  const apartMm = Math.hypot(at.x - screw.at.x, at.y - screw.at.y) - screw.travelMm;
  return (
    apartMm >= screw.seatRadiusMm + stopNumbers.pinDiameterMm / 2 + stopNumbers.counterboreWallMm
  );
}

const steps = (fromMm: number, toMm: number): readonly number[] =>
  Array.from({ length: Math.max(0, Math.floor((toMm - fromMm) / 2)) }, (_, i) => fromMm + 2 * i);

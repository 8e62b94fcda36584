import type { Ring } from './ring.ts';

/** The most that a map's own part (xx, xy, yx, yy, from the third on) moves a place 1 mm away, mm. */
export const stretchOf = (off: ArrayLike<number>): number =>
  Math.sqrt(off[2]! * off[2]! + off[3]! * off[3]! + off[4]! * off[4]! + off[5]! * off[5]!);

/** What is surely left of how far apart places are when one of them moves with this ring. */
export const keptShare = (ring: Ring): number => 1 - stretchOf(ring.moved.off);

/**
 * By how much less than nominally a place of one ring and one of another can be apart, mm, after `keptShare` of
 * the other: side by side they move alike but for what differs in their maps, which is most at a corner of
 * the box that the one lies in.
 */
export function nearerBy(from: Ring, to: Ring): number {
  const one = from.moved.off;
  const other = to.moved.off;
  const { lowX, lowY, highX, highY } = from.moved.box;
  const x = one[0]! - other[0]!;
  const y = one[1]! - other[1]!;
  const xx = one[2]! - other[2]!;
  const xy = one[3]! - other[3]!;
  const yx = one[4]! - other[4]!;
  const yy = one[5]! - other[5]!;
  const far2 = (atX: number, atY: number): number => {
    const dx = x + xx * atX + xy * atY;
    const dy = y + yx * atX + yy * atY;
    return dx * dx + dy * dy;
  };
  const most2 = Math.max(
    far2(lowX, lowY),
    far2(lowX, highY),
    far2(highX, lowY),
    far2(highX, highY),
  );
  return Math.sqrt(most2) + from.moved.ownMm + to.moved.ownMm;
}

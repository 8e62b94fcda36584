import { chordCount, type Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { stopNumbers } from './numbers.ts';

export interface SlotShape {
  readonly at: Point<'corner'>;
  readonly radiusMm: number;
  /** Half the way between the middles of its round ends; 0 for a round hole. */
  readonly along: 'x' | 'y';
  readonly travelMm: number;
}

/**
 * A hole's outline, counter-clockwise. Its chords touch the true hole from outside (vertices at
 * radius / cos of half a chord), so that a pin or screw of the full diameter goes through.
 * `chordsForMm`: radius that sets the number of chords, so that a hole and its seat have as many.
 */
export function holeOutline(hole: SlotShape, chordsForMm: number): Outline<'corner'> {
  const perEnd = chordCount(chordsForMm, stopNumbers.chordMm) / 2;
  const half = Math.PI / 2 / perEnd;
  const reach = hole.radiusMm / Math.cos(half);
  const ends = [1, -1].flatMap((end) =>
    Array.from({ length: perEnd }, (_, i) => {
      const turn = -Math.PI / 2 + (2 * i + 1) * half;
      return {
        x: end * (hole.travelMm + reach * Math.cos(turn)),
        y: end * reach * Math.sin(turn),
      };
    }),
  );
  return ends.map((p) =>
    hole.along === 'x'
      ? { x: hole.at.x + p.x, y: hole.at.y + p.y }
      : { x: hole.at.x - p.y, y: hole.at.y + p.x },
  );
}

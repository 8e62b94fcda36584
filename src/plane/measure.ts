import type { Frame, Point } from './point.ts';
import type { Outline } from './outline.ts';

/** Area in mm2, positive when the outline is counter-clockwise. */
export function signedAreaMm2(outline: Outline<Frame>): number {
  const origin = outline[0];
  if (origin === undefined) return 0;
  // About the first vertex, so that a small outline far from the origin keeps its digits.
  return outline.reduce((sum, p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    return sum + ((p.x - origin.x) * (q.y - origin.y) - (q.x - origin.x) * (p.y - origin.y)) / 2;
  }, 0);
}

export interface Bounds {
  readonly lowX: number;
  readonly lowY: number;
  readonly highX: number;
  readonly highY: number;
}

/** The upright box round some places; turned inside out (infinite) when there are none. */
export function boundsOf(places: readonly Point<Frame>[]): Bounds {
  return places.reduce<Bounds>(
    (b, p) => ({
      lowX: Math.min(b.lowX, p.x),
      lowY: Math.min(b.lowY, p.y),
      highX: Math.max(b.highX, p.x),
      highY: Math.max(b.highY, p.y),
    }),
    { lowX: Infinity, lowY: Infinity, highX: -Infinity, highY: -Infinity },
  );
}

import type { Point } from '../plane/point.ts';

/** Anything that stands on the bed: an outline (counter-clockwise, layout frame) and a height range, mm above the bed. */
export interface Body {
  readonly name: string;
  readonly outline: readonly Point<'layout'>[];
  readonly lowMm: number;
  readonly highMm: number;
}

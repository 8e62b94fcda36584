import type { Track } from '../../job/holding.ts';
import type { Point } from '../../plane/point.ts';
import type { Body } from '../../sweep/body.ts';

/** What is in the bed and on it besides stops, as far as a person said. */
export interface InBed {
  readonly tracks: readonly Track[];
  /** What holds the spoilboard down. */
  readonly boardScrews: readonly Point<'bed'>[];
  /** Clamps and screws that hold the blank, by placing; null: nobody planned them. */
  readonly clamps: { readonly frontUp: readonly Body[]; readonly backUp: readonly Body[] } | null;
}

export const emptyBed: InBed = { tracks: [], boardScrews: [], clamps: null };

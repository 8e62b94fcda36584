import type { Point } from '../../plane/point.ts';

/**
 * A program for the router before it is written down: mm, x right and y away from the operator from its
 * own zero, z up from the surface of the spoilboard. One cutter. It starts at the safe height, and
 * only there does it move fast in the plane: everything lower is at a feed.
 */
export interface Program {
  /** Such as `mill the stops`; also names the file. */
  readonly name: string;
  readonly jobName: string;
  /** What it is for, what lies on the bed, where zero is: one line each on top of the file. */
  readonly header: readonly string[];
  readonly cautions: readonly string[];
  readonly cutter: ProgramCutter;
  /** Where its zero stands. */
  readonly zeroAt: Point<'layout'>;
  /** Height of its Z zero over the surface of the spoilboard; what is below counts from that surface. */
  readonly zeroHighMm: number;
  /** Top of whatever lies or stands on the bed while it runs. */
  readonly highestMm: number;
  readonly safeMm: number;
  /** Where the cutter waits first, spindle still, so that a person sees whether the zero is right. */
  readonly witness: Witness;
  /** An air cut runs with the spindle off. */
  readonly spindle: 'turns' | 'stands still';
  readonly moves: readonly Move[];
}

export interface ProgramCutter {
  readonly name: string;
  readonly diameterMm: number;
  readonly speedPerMin: number;
}

export interface Witness {
  readonly at: Place;
  /** What it must stand over. */
  readonly over: string;
}

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export type Move =
  | { readonly kind: 'note'; readonly words: string }
  /** Fast and level, at the safe height. */
  | { readonly kind: 'over'; readonly x: number; readonly y: number }
  /** Fast, straight up to the safe height. */
  | { readonly kind: 'up' }
  | { readonly kind: 'cut'; readonly to: Place; readonly feedMmPerMin: number }
  /** Round `centre`, level or rising evenly; a full turn when it ends over where it began. */
  | {
      readonly kind: 'arc';
      readonly to: Place;
      readonly centre: { readonly x: number; readonly y: number };
      readonly turn: 'clockwise' | 'counter-clockwise';
      readonly feedMmPerMin: number;
    };

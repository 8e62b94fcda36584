import type { Written } from '../schema/raw-shop.ts';

/** A figure read once, or several times. */
export type RawReading = Written | readonly Written[];

/** What a readings file may hold, as it is written. */
export interface RawReadings {
  readonly 'flipwright-readings': number;
  readonly shop?: string | undefined;
  readonly measured?: Written | undefined;
  readonly square?: readonly RawSquare[] | undefined;
  readonly 'test-piece'?: RawTestPiece | undefined;
}

/** One way of finding squareness or scale: which keys belong to which way is checked apart. */
export interface RawSquare {
  readonly by:
    'diagonals' | 'three-lengths' | 'square-and-dial' | 'turned-over' | 'circle' | 'length';
  readonly gauge?: string | undefined;
  readonly size?: readonly [Written, Written] | undefined;
  readonly 'to-far-right'?: RawReading | undefined;
  readonly 'to-far-left'?: RawReading | undefined;
  readonly 'left-side'?: RawReading | undefined;
  readonly over?: Written | undefined;
  readonly dial?: readonly [Written, Written] | undefined;
  readonly turned?: readonly [Written, Written] | undefined;
  readonly points?: 'right' | 'left' | undefined;
  readonly square?: string | undefined;
  readonly gap?: RawReading | undefined;
  readonly diameter?: Written | undefined;
  readonly 'at-45'?: RawReading | undefined;
  readonly 'at-135'?: RawReading | undefined;
  readonly 'along-x'?: RawReading | undefined;
  readonly 'along-y'?: RawReading | undefined;
  readonly axis?: 'x' | 'y' | undefined;
  readonly commanded?: Written | undefined;
  readonly measured?: RawReading | undefined;
}

/** Readings of a test piece that was turned over once or several times. */
export interface RawTestPiece {
  readonly gauge?: string | undefined;
  /** Nominal wall between a front and a back slot, and web of a corner tongue. */
  readonly wall?: Written | undefined;
  readonly web?: Written | undefined;
  readonly cutter?: string | undefined;
  /** The piece's own size by caliper, along X and along Y. */
  readonly size?: readonly [Written, Written] | undefined;
  readonly turns: readonly RawTurn[];
}

export interface RawTurn {
  readonly combs: readonly RawComb[];
  readonly webs?: readonly RawWeb[] | undefined;
}

/** Walls of one comb, front|back and back|front, in the direction of its axis. */
export interface RawComb {
  readonly along: 'x' | 'y';
  readonly at: readonly [Written, Written];
  readonly t1: RawReading;
  readonly t2: RawReading;
}

export interface RawWeb {
  readonly at: readonly [Written, Written];
  readonly web: RawReading;
}

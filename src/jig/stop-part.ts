import type { Point } from '../plane/point.ts';
import type { Outline } from '../plane/outline.ts';
import type { Lettering } from './plate/plate.ts';
import type { Body } from '../sweep/body.ts';
import type { Thread } from './numbers.ts';

/** The stops that a job describes, or why there are none and what would do. */
export type StopsAnswer =
  | { readonly kind: 'made'; readonly parts: readonly StopPart[] }
  | { readonly kind: 'cannot'; readonly because: string; readonly wouldFit: string };

/** One piece of the stops, as it is printed, standing where it belongs. */
export interface StopPart {
  /** Such as `corner stop, near left`. */
  readonly name: string;
  /** What others must keep clear of: final faces, layout frame. */
  readonly body: Body;
  /** Screw heads that stand above the body's top; none when they are sunk. */
  readonly heads: readonly Body[];
  readonly profile: Profile;
  /** Engraved on its top, layout frame. */
  readonly words: readonly Lettering[];
  readonly lands: readonly Land[];
  /** Signs of x and y in which its faces look: the side from which to show it. */
  readonly towardsBlank: { readonly x: 1 | -1; readonly y: 1 | -1 };
  readonly screws: readonly Screw[];
  /** Steel pins that bring it back to its place; only for stops that stand on pins. */
  readonly pins: readonly Pin[];
  /** Heights above the bed between which the final face touches, mm. */
  readonly band: { readonly lowMm: number; readonly highMm: number };
  /** The printed faces stand this much towards the blank, to be milled off; 0 when not milled. */
  readonly allowanceMm: number;
  /** Name of the cutter that mills the faces, or null. */
  readonly milledWith: string | null;
  /** Plain sentences for the sheet. */
  readonly notes: readonly string[];
}

/** A stop before it is known whether it is made: what would be engraved on it is not worked out yet. */
export type BarePart = Omit<StopPart, 'words'> & {
  readonly label: () => StopPart['words'];
};

/**
 * A solid as outlines by height, lowest first: every level has as many loops and vertices as the
 * next, vertex over vertex. Two levels at one height make a shoulder. Layout frame.
 */
export interface Profile {
  readonly levels: readonly Level[];
}

export interface Level {
  readonly zMm: number;
  /** Counter-clockwise. */
  readonly outline: Outline<'layout'>;
  /** Clockwise, so that one rule winds every wall. */
  readonly holes: readonly Outline<'layout'>[];
}

/** A flat that touches the blank, between its two ends on the final face. */
export interface Land {
  readonly face: 'fence' | 'side';
  readonly ends: readonly [Point<'layout'>, Point<'layout'>];
  /** Which contacts of the placings it carries. */
  readonly contacts: readonly string[];
}

export interface Screw {
  readonly at: Point<'layout'>;
  readonly onBed: Point<'bed'>;
  /** Column and row of the bed's insert, from 0; null where the bed has none and wants one. */
  readonly insert: { readonly column: number; readonly row: number } | null;
  readonly thread: Thread;
  readonly hole:
    | { readonly kind: 'round' }
    /** Lets the screw stand `travelMm` to either side along the axis, to square the stop. */
    | { readonly kind: 'slot'; readonly along: 'x' | 'y'; readonly travelMm: number };
  /** Depth of the seat bored for its head, mm; 0: the head stands on top. */
  readonly counterboreMm: number;
}

export interface Pin {
  readonly at: Point<'layout'>;
  readonly onBed: Point<'bed'>;
  readonly diameterMm: number;
}

import type { Edge } from '../job/job.ts';

/**
 * One thing that is off by one number in one trial. The model takes a column of draws for each;
 * a true set-up has 0 in all of them. Lengths mm, leans as tangents, strains as pure numbers.
 */
export type Deviation =
  | { readonly kind: 'machine-lean' }
  | { readonly kind: 'scale'; readonly axis: Axis }
  /** Error of an axis at one of the places between which it changes smoothly. */
  | { readonly kind: 'local-error'; readonly axis: Axis; readonly knot: number }
  | { readonly kind: 'cutter-lean'; readonly axis: Axis }
  | { readonly kind: 'repeatability'; readonly cut: string; readonly axis: Axis }
  | { readonly kind: 'lost-motion'; readonly cut: string; readonly axis: Axis }
  /** Repeatability of one milled stop face, along its normal, away from the blank. */
  | { readonly kind: 'milled-face'; readonly face: StopFace }
  | { readonly kind: 'cutter-radius'; readonly cutter: string }
  /** How far a cutter is pushed off the walls of one cut, mm: it then cuts as if it were thinner. */
  | { readonly kind: 'push-off'; readonly cut: string }
  | { readonly kind: 'tip-flat'; readonly cutter: string }
  | { readonly kind: 'width' }
  | { readonly kind: 'height' }
  | { readonly kind: 'thickness' }
  | { readonly kind: 'thickness-taper'; readonly axis: Axis }
  | { readonly kind: 'cup' }
  /** Which face the cup's hump is on when nobody knows: 1 front, -1 back; 0 is front. */
  | { readonly kind: 'cup-side' }
  | { readonly kind: 'swarf'; readonly placing: PlacingKey }
  | { readonly kind: 'bed-lean'; readonly axis: Axis }
  /** Height of the bed at a place of the layout, mm. */
  | { readonly kind: 'bed-height'; readonly xMm: number; readonly yMm: number }
  /** Zero set too high, mm. */
  | { readonly kind: 'z-touch'; readonly placing: PlacingKey; readonly cutter: string }
  | { readonly kind: 'square' }
  | { readonly kind: 'taper'; readonly axis: Axis }
  | { readonly kind: 'bevel'; readonly edge: Edge }
  | { readonly kind: 'crook'; readonly edge: Edge }
  | { readonly kind: 'bump'; readonly edge: Edge; readonly alongMm: number }
  /** A strain along one axis; of both, that along the one that moves more. */
  | { readonly kind: 'movement'; readonly axis: Axis | 'both' }
  | { readonly kind: 'fence-angle' }
  | { readonly kind: 'stop-square'; readonly which: 'first' | 'second' }
  | { readonly kind: 'spacing' }
  | { readonly kind: 'seat-gap'; readonly placing: PlacingKey; readonly contact: string }
  | { readonly kind: 'give'; readonly placing: PlacingKey; readonly face: 'fence' | 'side' }
  | { readonly kind: 'clamp-drag'; readonly placing: PlacingKey; readonly from: 'fence' | 'side' }
  /** Where a bulging edge rests on a fence arm: 0 at the end nearer the side stop in use, 1 at the other. */
  | { readonly kind: 'rock'; readonly placing: PlacingKey }
  /** How squarely a blank is laid that nothing seats (tangent). */
  | { readonly kind: 'laid'; readonly placing: PlacingKey }
  /** Clearance of a hole on its dowel, or what the two sizes are off by, in diameter; dowels count from 1. */
  | { readonly kind: 'clearance' | 'pin-size' | 'hole-size'; readonly dowel: number }
  /** Where a hole is in the blank that was drilled separately. */
  | { readonly kind: 'hole-place'; readonly dowel: number; readonly axis: Axis }
  /** Gap on every side of a nest. */
  | { readonly kind: 'nest-clearance' }
  /** Where a loose blank comes to lie among all that is possible, -0.5 to 0.5: its turn, across its rows, along them. */
  | {
      readonly kind: 'take-up';
      readonly placing: PlacingKey;
      readonly part: 'turn' | 'across' | 'along';
    }
  /** Touch errors, positive away from the face; `touch` 2 is the second edge of a zero at the middle. */
  | {
      readonly kind: 'zero-touch';
      readonly placing: PlacingKey;
      readonly axis: Axis;
      readonly touch: 1 | 2;
    }
  /** What homing again or a power cycle adds to a kept zero. */
  | { readonly kind: 'zero-return'; readonly axis: Axis }
  /** What is dialled into the second placing's zero, mm: of its draws, how far the reading of it was off. */
  | { readonly kind: 'dialled'; readonly axis: Axis }
  /** How far the caliper was off on a blank whose length is dialled in, mm. */
  | { readonly kind: 'calipered'; readonly axis: Axis }
  /** What came with the test piece that was read; `what` is the key of the same deviation of a part. */
  | { readonly kind: 'of-test-piece'; readonly what: string };

export type Axis = 'x' | 'y';
export type PlacingKey = 'front-up' | 'back-up';
export type StopFace = 'fence' | 'side-first' | 'side-second';

/** A stable address: the same thing keeps its luck when other things come or go. */
export function deviationKey(deviation: Deviation): string {
  const { kind, ...rest } = deviation;
  return [kind, ...Object.values<string | number>(rest)].join('/');
}

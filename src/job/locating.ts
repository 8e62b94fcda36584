import type { Point } from '../plane/point.ts';
import type { Edge, Spread, Stops } from './job.ts';
import type { Cutter } from './shop.ts';

/** How the blank comes back to its place. One of these in a job. */
export type Locating =
  | { readonly locating: 'stops'; readonly stops: Stops }
  | { readonly locating: 'dowels'; readonly dowels: Dowels }
  | { readonly locating: 'fence-and-dowel'; readonly fenceAndDowel: FenceAndDowel }
  | { readonly locating: 'nest'; readonly nest: Nest };

/** Two contacts on one edge of the blank: they give its angle and one offset. */
export interface Fence {
  /** The blank's edge that goes against the fence in the front-up placing. */
  readonly fence: Edge;
  readonly fenceTouch: Touch;
  readonly band: Band;
  readonly made: Made;
  /** At each contact, each placing, mm, never negative. */
  readonly seatGap: Spread;
  /** How far a stop yields under the push, each face and placing, mm. */
  readonly give: Spread;
}

/** The fence gives the angle and one offset, a dowel in one hole the place along it. */
export interface FenceAndDowel extends Fence {
  readonly dowel: DowelHoles;
}

/** Dowels standing in the bed, through holes in the blank. */
export interface DowelHoles {
  /** Nominal centres of the holes in the blank; turned over, they fall on each other. */
  readonly at: readonly Point<'blank'>[];
  readonly diameterMm: number;
  readonly clearance: Clearance;
  /** With the blank: through blank and bed in one clamping, so the first placing needs no seating. */
  readonly drilled: 'with-the-blank' | 'separately';
  /** Of each hole in the blank, along each axis, mm; only of holes that are drilled separately. */
  readonly drillError: Spread;
  readonly takeUp: TakeUp;
  /** How squarely to the machine the blank is laid for a first placing without seating (tangent). */
  readonly laid: Spread;
}

/** Two to four of them. */
export type Dowels = DowelHoles;

/** Of each pair of pin and hole, in diameter, mm; what comes out below 0 counts as 0. */
export type Clearance =
  | { readonly kind: 'stated'; readonly spread: Spread }
  /** Sizes less the nominal diameter. */
  | { readonly kind: 'sizes'; readonly pin: Spread; readonly hole: Spread };

/** Anywhere that the clearance allows, or pushed one way on the machine in every placing. */
export type TakeUp = 'anywhere' | 'left' | 'right' | 'near' | 'far';

/** A recess of the bed that this machine cut, into which the blank or the part drops. */
export interface Nest {
  /** The feature whose cut outline drops in, in the second placing only; null: the blank, in both. */
  readonly around: string | null;
  /** Gap on every side, mm. */
  readonly clearance: Spread;
  readonly cutter: Cutter;
  /** Height of its walls, mm. */
  readonly wallMm: number;
  readonly takeUp: TakeUp;
  /** Chips and burrs at each place that can touch, each placing, mm, never negative. */
  readonly seatGap: Spread;
  /** How squarely the blank is laid for a first placing without a nest (tangent). */
  readonly laid: Spread;
}

/** Distances in mm from the front-up corner: along the fence, or from the fence along the side stop. */
export type Touch =
  | { readonly kind: 'buttons'; readonly atMm: readonly number[] }
  | { readonly kind: 'arm'; readonly fromMm: number; readonly toMm: number };

/** Heights above the bed between which a stop can touch the edge. */
export type Band =
  | { readonly kind: 'plain'; readonly heightMm: number }
  | { readonly kind: 'narrow'; readonly touchHeightMm: number };

export type Made =
  /** Fence turned by `angle` about its corner, each side stop out of square by `square` (tangents);
   * a second side stop is off by `spacing` along the fence, mm. */
  | {
      readonly kind: 'set-by-hand';
      readonly angle: Spread;
      readonly square: Spread;
      readonly spacing: Spread;
    }
  | {
      readonly kind: 'on-bed-pins';
      readonly angle: Spread;
      readonly square: Spread;
      readonly spacing: Spread;
    }
  /** Faces cut by this machine from its own zero with `cutter`. */
  | { readonly kind: 'milled-in-place'; readonly cutter: Cutter };

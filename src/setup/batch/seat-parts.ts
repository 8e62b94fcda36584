import type { EdgeColumns } from './edge-columns.ts';

/** Where the blank lies in one placing as in `Pose`, a column each. */
export interface PoseColumns {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  readonly backA: Float64Array;
  readonly backB: Float64Array;
}

/** One edge of the blank against one face of the stops. Columns of draws as `Columns.of` gives them. */
export interface Meeting {
  readonly edge: EdgeColumns;
  readonly from: number;
  readonly sign: number;
  readonly bevel: number;
  readonly give: number;
  /** Where its one or two contacts are along the face, from the corner. */
  readonly at1: number;
  readonly at2: number;
  readonly bump1: number;
  readonly gap1: number;
  readonly bump2: number;
  readonly gap2: number;
  /** An arm's edge rests beside a hollow spot, a button falls into it. */
  readonly floor: number;
  readonly isArm: boolean;
}

/** What both edges share: where the corner is along the fence, the draws' columns of one placing, how a bevel is felt. */
export interface Common {
  readonly cornerA: number;
  readonly rock: number;
  readonly dragSide: number;
  readonly dragFence: number;
  readonly thick: number;
  readonly thickMm: number;
  readonly isNarrow: boolean;
  readonly feltMm: number;
  readonly feltSign: number;
}

import { studentQuantile } from '../num/textbook.ts';
import type { Point } from '../plane/point.ts';
import type { FittedPlane, Height } from './bed-plane.ts';
import { isOnOneLine, leastSquaresPlane } from './bed-plane.ts';

/** A reason not to believe readings of a bed; `index` is that of the reading, where it is one. */
export type Doubt =
  | { readonly kind: 'too few'; readonly count: number }
  | { readonly kind: 'on one line' }
  | { readonly kind: 'axes swapped' }
  | { readonly kind: 'off the board'; readonly index: number }
  | {
      readonly kind: 'wild';
      readonly index: number;
      /** How far it stands off the plane of all the others, and how those scatter. */
      readonly offMm: number;
      readonly scatterMm: number;
    }
  | { readonly kind: 'all the same' };

/** The board that the readings were taken on, from its near-left corner. */
export interface Board {
  readonly xMm: number;
  readonly yMm: number;
}

/** Three fix a plane, so that only a fourth can show that the bed is not one. */
const FEWEST = 4;
/** Chance of calling a sound set of readings wild. */
const FALSE_ALARM = 0.001;
/** Less than this is never called wild, mm: no bed is truer, and no dial tells it surely. */
const FINEST_MM = 0.02;
/** Two readings as close as this are the same place read again. */
const SAME_PLACE_MM = 5;

/** Everything that speaks against a set of bed readings; none when they can be worked with. */
export function doubtsOf(heights: readonly Height[], board: Board): readonly Doubt[] {
  const doubts: Doubt[] = [...misplaced(heights, board)];
  if (heights.length < FEWEST) return [...doubts, { kind: 'too few', count: heights.length }];
  if (isOnOneLine(heights)) return [...doubts, { kind: 'on one line' }];
  const first = heights[0]!.heightMm;
  if (heights.every(({ heightMm }) => heightMm === first))
    return [...doubts, { kind: 'all the same' }];
  const plane = leastSquaresPlane(heights);
  const wild = plane === null ? null : wildest(heights, plane);
  return wild === null ? doubts : [...doubts, wild];
}

function misplaced(heights: readonly Height[], board: Board): readonly Doubt[] {
  const isOn = ({ x, y }: Point<'bed'>): boolean =>
    x >= 0 && y >= 0 && x <= board.xMm && y <= board.yMm;
  const off = heights.flatMap(({ at }, index) => (isOn(at) ? [] : [index]));
  if (off.length === 0) return [];
  if (heights.every(({ at }) => isOn({ x: at.y, y: at.x }))) return [{ kind: 'axes swapped' }];
  return off.map((index) => ({ kind: 'off the board', index }));
}

/**
 * The reading that stands furthest off the plane of all others, when that is more than luck: its
 * deleted residual against Student's t, for the worst of n. One that was read again and found the
 * same is not wild but the bed.
 * Source: R. D. Cook and S. Weisberg, Residuals and Influence in Regression (1982), section 2.2.2.
 */
function wildest(heights: readonly Height[], plane: FittedPlane): Doubt | null {
  const n = heights.length;
  const dof = plane.dof - 1;
  if (dof < 1 || plane.scatterMm === 0) return null;
  const squares = plane.scatterMm ** 2 * plane.dof;
  const limit = studentQuantile(1 - FALSE_ALARM / (2 * n), dof);
  let worst: Doubt | null = null;
  let largest = limit;
  plane.residualsMm.forEach((residual, index) => {
    const free = 1 - plane.leverages[index]!;
    // A reading that alone holds up a corner of the plane cannot be judged by the others.
    if (free < 1e-9) return;
    const rest = Math.max(0, squares - residual ** 2 / free) / dof;
    const scatterMm = Math.sqrt(rest);
    const size = Math.abs(residual) / Math.sqrt(rest * free || Number.MIN_VALUE);
    if (size <= largest || Math.abs(residual) / free < FINEST_MM) return;
    if (isReadAgain(heights, index, scatterMm)) return;
    largest = size;
    worst = { kind: 'wild', index, offMm: residual / free, scatterMm };
  });
  return worst;
}

function isReadAgain(heights: readonly Height[], index: number, scatterMm: number): boolean {
  const one = heights[index]!;
  return heights.some(
    ({ at, heightMm }, k) =>
      k !== index &&
      Math.hypot(at.x - one.at.x, at.y - one.at.y) <= SAME_PLACE_MM &&
      Math.abs(heightMm - one.heightMm) <= Math.max(0.03, 3 * scatterMm),
  );
}

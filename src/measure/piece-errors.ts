import type { Job } from '../job/job.ts';
import type { Estimate } from './estimate.ts';
import { combined, factor95 } from './estimate.ts';
import type { AxisField, TurnRead } from './test-piece.ts';
import { fieldOf } from './test-piece.ts';

/** What a test piece tells, each by itself. Lengths mm, leans as tangents. */
export interface PieceErrors {
  readonly x: AxisField | null;
  readonly y: AxisField | null;
  /** The fence turned counter-clockwise; in it the seating of these turns. */
  readonly fenceAngle: Estimate | null;
  /** The Y axis leaning right. */
  readonly lean: Estimate | null;
  /** How much each wall of a slot is cut further than drawn: cutter larger, less its push-off. */
  readonly growth: Estimate | null;
  /** Slopes that theory says are nil and these readings say are not: a misreading, moving wood, or a local axis error. */
  readonly strange: readonly {
    readonly axis: 'x' | 'y';
    readonly slope: 'perX' | 'perY';
    readonly estimate: Estimate;
  }[];
  readonly untold: readonly Untold[];
  readonly turnCount: number;
}

/** What these readings cannot tell apart, and the reading that would. */
export type Untold =
  | { readonly kind: 'no combs'; readonly axis: 'x' | 'y' }
  /** All combs of an axis stand at one height (x) or one place along (y): the turn is mixed with the shift. */
  | { readonly kind: 'one row'; readonly axis: 'x' | 'y' }
  | { readonly kind: 'lean and fence angle' }
  /** On dowels or in a nest lean, play and seat come as one. */
  | { readonly kind: 'not on stops' }
  /** One turn over: how the next is seated is not in it. */
  | { readonly kind: 'one turn' }
  /** Length of the blank, zero and scale come as one number along the axis that changes ends. */
  | { readonly kind: 'length, zero and scale' }
  /** What drops out when it is turned this way, and shows when it is turned the other way. */
  | { readonly kind: 'drops out'; readonly turn: 'about-y' | 'about-x' };

/**
 * Separates shift, turn, lean and size, for a blank turned over on one fence with its zero kept; otherwise
 * located, shift and size only.
 * Source: registration.md section 2, rows of shear and fence angle, turned about Y and about X alike:
 * across X c = -2 (lean + fence), along Y e = 2 fence.
 */
export function pieceErrors(
  turns: readonly TurnRead[],
  wallMm: number,
  turn: 'about-y' | 'about-x',
  locating: Job['locating'] = 'stops',
): PieceErrors {
  const [x, y] = [fieldOf(turns, 'x'), fieldOf(turns, 'y')];
  const c = x?.perY ?? null;
  const e = y?.perX ?? null;
  // Dowels and nests turn otherwise: their slopes are told, not taken apart.
  const onStops = locating === 'stops';
  const strange = [x, y].flatMap((field) => (field === null ? [] : strangeOf(field)));
  return {
    x,
    y,
    fenceAngle: e === null || !onStops ? null : combined([{ of: e, times: 0.5 }]),
    lean:
      c === null || e === null || !onStops
        ? null
        : combined([
            { of: c, times: -0.5 },
            { of: e, times: -0.5 },
          ]),
    growth: growthOf(turns, wallMm),
    strange,
    untold: untoldBy(x, y, turns.length, turn, onStops),
    turnCount: turns.length,
  };
}

function strangeOf(field: AxisField): PieceErrors['strange'] {
  const slope = field.axis === 'x' ? 'perX' : 'perY';
  const estimate = field[slope];
  if (estimate === null) return [];
  const isSure = Math.abs(estimate.value) > 1.5 * factor95(estimate.dof) * estimate.sd;
  // Larger than this is a misreading or moving wood even where the readings are poor.
  const isLarge = Math.abs(estimate.value) > 0.05 / 100;
  return isSure && isLarge ? [{ axis: field.axis, slope, estimate }] : [];
}

function growthOf(turns: readonly TurnRead[], wallMm: number): Estimate | null {
  const combs = turns.flatMap((one) => one.combs);
  const n = combs.length;
  if (n === 0) return null;
  // Two slots of different faces each cut into a wall from one side, so half of it is one wall's.
  const values = combs.map(({ t1Mm, t2Mm }) => (wallMm - (t1Mm + t2Mm) / 2) / 2);
  const value = values.reduce((sum, one) => sum + one, 0) / n;
  const gaugeSd = Math.max(...combs.map(({ sdMm }) => sdMm)) / 2;
  if (n < 2) return { value, sd: gaugeSd, dof: Infinity };
  const s = Math.sqrt(values.reduce((sum, one) => sum + (one - value) ** 2, 0) / (n - 1));
  // The caliper's own zero is in every wall alike, so repeats do not take it away.
  const sd = Math.hypot(s / Math.sqrt(n), gaugeSd);
  return { value, sd, dof: s === 0 ? Infinity : (n - 1) * (sd / (s / Math.sqrt(n))) ** 4 };
}

function untoldBy(
  x: AxisField | null,
  y: AxisField | null,
  turnCount: number,
  turn: 'about-y' | 'about-x',
  onStops: boolean,
): readonly Untold[] {
  const untold: Untold[] = [];
  for (const [axis, field] of [
    ['x', x],
    ['y', y],
  ] as const) {
    if (field === null) untold.push({ kind: 'no combs', axis });
    else if ((axis === 'x' ? field.perY : field.perX) === null)
      untold.push({ kind: 'one row', axis });
  }
  if (!onStops) untold.push({ kind: 'not on stops' });
  else if ((x?.perY ?? null) !== null && (y?.perX ?? null) === null)
    untold.push({ kind: 'lean and fence angle' });
  if (turnCount < 2) untold.push({ kind: 'one turn' });
  const changing = turn === 'about-y' ? x : y;
  if (changing !== null) untold.push({ kind: 'length, zero and scale' });
  untold.push({ kind: 'drops out', turn });
  return untold;
}

import type { Point } from '../plane/point.ts';
import type { Height } from './bed-plane.ts';
import { rangeOf } from './bed-plane.ts';
import { minimumZone } from './minimum-zone.ts';
import { plateRows } from './plate.ts';
import type { Stack } from './shim-stacks.ts';
import { stacksOf } from './shim-stacks.ts';
import { bestChoice, lifted, type Bench } from './shim-search.ts';

/** A kind of shim at hand: measured thickness of one piece and its sd, mm; `count` null: as many as wanted. */
export interface Shim {
  readonly name: string;
  readonly thickMm: number;
  readonly sdMm: number;
  readonly count: number | null;
}

export interface ShimPlan {
  readonly at: readonly { readonly screw: Point<'bed'>; readonly stack: Stack }[];
  /** Heights expected afterwards, in the order of the readings, and the sd of each (shims and gauge). */
  readonly after: readonly Height[];
  readonly sdsMm: readonly number[];
  readonly before: Parallel;
  readonly expected: Parallel;
}

export interface Parallel {
  /** Greatest less least height against the travel, mm. */
  readonly rangeMm: number;
  /** Between the two closest parallel planes, mm. */
  readonly flatnessMm: number;
}

export type ShimAnswer =
  | { readonly kind: 'plan'; readonly plan: ShimPlan }
  /** Nothing at hand makes the bed more parallel by as much as a piece must earn. */
  | { readonly kind: 'leave alone'; readonly before: Parallel }
  | { readonly kind: 'no stock' }
  /** Fewer than three bed screws, or all on one line. */
  | { readonly kind: 'no hold' };

/**
 * Which shims to put under which bed screw, so that the heights against the travel differ least. No
 * plan is given that leaves the bed less parallel, or less flat by more than twice the gauge's sd,
 * which is all that the readings can tell.
 */
export function shimPlan(
  heights: readonly Height[],
  screws: readonly Point<'bed'>[],
  stock: readonly Shim[],
  gaugeSdMm: number,
): ShimAnswer {
  if (stock.length === 0) return { kind: 'no stock' };
  const rows = plateRows(screws, [...heights.map(({ at }) => at), ...screws]);
  if (rows === null) return { kind: 'no hold' };
  const before = parallelOf(heights);
  const stacks = stacksOf(stock, 1.5 * before.rangeMm);
  const bench: Bench = {
    heights,
    rows: rows.slice(0, heights.length),
    stacks,
    stock,
    worstFlatMm: before.flatnessMm + 2 * gaugeSdMm,
  };
  const best = bestChoice(bench, screws.length);
  if (best.every((k) => k === 0)) return { kind: 'leave alone', before };
  const after = lifted(bench, best);
  return {
    kind: 'plan',
    plan: {
      at: best.map((k, j) => ({ screw: screws[j]!, stack: stacks[k]! })),
      after,
      sdsMm: bench.rows.map((row) =>
        Math.hypot(gaugeSdMm, ...best.map((k, j) => row[j]! * stacks[k]!.sdMm)),
      ),
      before,
      expected: parallelOf(after),
    },
  };
}

const parallelOf = (heights: readonly Height[]): Parallel => ({
  rangeMm: rangeOf(heights),
  flatnessMm: minimumZone(heights)?.flatnessMm ?? 0,
});

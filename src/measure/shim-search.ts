import type { Height } from './bed-plane.ts';
import { minimumZone } from './minimum-zone.ts';
import type { Stack } from './shim-stacks.ts';
import { usesOf } from './shim-stacks.ts';
import type { Shim } from './shims.ts';

/** What each piece of shim must make the bed more parallel by, mm: less is not worth the loosened screws. */
export const EARNS_MM = 0.005;
/** Of two plans otherwise alike the one that lifts less: this much of its lift counts against it. */
export const LIFT_SHARE = 1e-4;

/** As many choices are tried one by one in a moment. */
const FEW = 50_000;

/** A choice of stack, by its number, for each screw. */
export type Choice = readonly number[];

/** What there is to choose from, and what a choice is judged by. */
export interface Bench {
  readonly heights: readonly Height[];
  readonly rows: readonly (readonly number[])[];
  readonly stacks: readonly Stack[];
  readonly stock: readonly Shim[];
  readonly worstFlatMm: number;
}

/**
 * The choice that costs least: by trying every one where they are few, else by changing one or two
 * screws at a time from several starts, as long as it helps.
 */
export function bestChoice(bench: Bench, screwCount: number): Choice {
  return bench.stacks.length ** screwCount <= FEW
    ? triedAll(bench, screwCount)
    : searched(bench, screwCount);
}

function triedAll(bench: Bench, screwCount: number): Choice {
  const count = bench.stacks.length;
  const choice = new Array<number>(screwCount).fill(0);
  let best: Choice = [...choice];
  let bestCost = costOf(bench, best);
  for (;;) {
    const turning = choice.findIndex((k) => k + 1 < count);
    if (turning < 0) return best;
    choice.fill(0, 0, turning);
    choice[turning]!++;
    const cost = costOf(bench, choice);
    if (cost < bestCost && tooUneven(bench, choice) === 0) [best, bestCost] = [[...choice], cost];
  }
}

function searched(bench: Bench, screwCount: number): Choice {
  const none: Choice = new Array<number>(screwCount).fill(0);
  const starts = [none, ...filledStarts(bench, screwCount)];
  let best = none;
  let bestCost = costOf(bench, none);
  for (const start of starts) {
    const found = settled(bench, start);
    const cost = costOf(bench, found);
    if (cost < bestCost && tooUneven(bench, found) === 0) [best, bestCost] = [found, cost];
  }
  return best;
}

/** Every screw brought as near to one level as the stacks can, for some levels. */
function filledStarts(bench: Bench, screwCount: number): readonly Choice[] {
  const { heights, stacks } = bench;
  const tops = [0, 0.2, 0.35, 0.5, 0.65, 0.8, 1, 1.3];
  const all = heights.map(({ heightMm }) => heightMm);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return tops.map((share) =>
    Array.from({ length: screwCount }, (_, j) => {
      // A reading counts for a screw by how much that screw moves it.
      let [sum, weights] = [0, 0];
      heights.forEach(({ heightMm }, i) => {
        const weight = Math.max(0, bench.rows[i]![j]!) ** 4;
        sum += weight * heightMm;
        weights += weight;
      });
      const wanted = low + share * (high - low) - (weights === 0 ? low : sum / weights);
      return nearest(stacks, Math.max(0, wanted));
    }),
  );
}

function nearest(stacks: readonly Stack[], wantedMm: number): number {
  let best = 0;
  stacks.forEach(({ thickMm }, k) => {
    if (Math.abs(thickMm - wantedMm) < Math.abs(stacks[best]!.thickMm - wantedMm)) best = k;
  });
  return best;
}

/** Improves a choice, and where a kind of shim has come to lie under every screw takes it out again. */
function settled(bench: Bench, start: Choice): Choice {
  let choice = improved(bench, start);
  for (const { name } of bench.stock) {
    const lower = choice.map((k) => withoutPiece(bench.stacks, k, name));
    if (lower.includes(-1)) continue;
    const found = improved(bench, lower);
    if (weighed(bench, found) < weighed(bench, choice)) choice = found;
  }
  return choice;
}

/** The stack that is left when a piece is taken out, by its number; -1 when the piece is not in it. */
function withoutPiece(stacks: readonly Stack[], k: number, name: string): number {
  const { pieces } = stacks[k]!;
  const at = pieces.indexOf(name);
  if (at < 0) return -1;
  const rest = pieces.filter((_, index) => index !== at).join();
  return stacks.findIndex((stack) => stack.pieces.join() === rest);
}

/** Changes one screw, or two together, as long as that costs less. */
function improved(bench: Bench, start: Choice): Choice {
  const { stacks } = bench;
  const choice = [...start];
  let cost = weighed(bench, choice);
  const attempt = (changes: readonly (readonly [screw: number, stack: number])[]): boolean => {
    const old = changes.map(([screw]) => choice[screw]!);
    changes.forEach(([screw, stack]) => {
      choice[screw] = stack;
    });
    if (costOf(bench, choice) < cost - 1e-12) {
      const changed = weighed(bench, choice);
      if (changed < cost - 1e-12) {
        cost = changed;
        return true;
      }
    }
    changes.forEach(([screw], k) => {
      choice[screw] = old[k]!;
    });
    return false;
  };
  const pairsToo = choice.length * stacks.length <= 250;
  for (let helped = true; helped;) {
    helped = false;
    for (let a = 0; a < choice.length; a++)
      for (let k = 0; k < stacks.length; k++) {
        if (k !== choice[a]) helped = attempt([[a, k]]) || helped;
        if (!pairsToo) continue;
        for (let b = 0; b < a; b++)
          for (let l = 0; l < stacks.length; l++)
            helped =
              attempt([
                [a, k],
                [b, l],
              ]) || helped;
      }
  }
  return choice;
}

/** Range of the heights, what the pieces must earn, and a little for the lift; infinite beyond the stock. */
function costOf(bench: Bench, choice: Choice): number {
  const { heights, rows, stacks, stock } = bench;
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < heights.length; i++) {
    let height = heights[i]!.heightMm;
    const row = rows[i]!;
    for (let j = 0; j < choice.length; j++) height += row[j]! * stacks[choice[j]!]!.thickMm;
    if (height < low) low = height;
    if (height > high) high = height;
  }
  let [pieces, lift] = [0, 0];
  for (const k of choice) {
    pieces += stacks[k]!.pieces.length;
    lift += stacks[k]!.thickMm;
  }
  const chosen = choice.map((k) => stacks[k]!);
  const isShort = stock.some(({ name, count }) => count !== null && usesOf(chosen, name) > count);
  return isShort ? Infinity : high - low + EARNS_MM * pieces + LIFT_SHARE * lift;
}

/** The cost with what a choice makes the bed less flat than it may be, ten times over. */
const weighed = (bench: Bench, choice: Choice): number =>
  costOf(bench, choice) + 10 * tooUneven(bench, choice);

/** By how much flatness would get worse than it may, mm. */
const tooUneven = (bench: Bench, choice: Choice): number =>
  Math.max(0, (minimumZone(lifted(bench, choice))?.flatnessMm ?? 0) - bench.worstFlatMm);

/** The heights with a choice of stacks under the screws. */
export const lifted = ({ heights, rows, stacks }: Bench, choice: Choice): readonly Height[] =>
  heights.map(({ at, heightMm }, i) => ({
    at,
    heightMm: choice.reduce((sum, k, j) => sum + rows[i]![j]! * stacks[k]!.thickMm, heightMm),
  }));

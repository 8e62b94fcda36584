import { expect } from 'vitest';
import { rangeOf } from '../../src/measure/bed-plane.ts';
import type { Height } from '../../src/measure/bed-plane.ts';
import { minimumZone } from '../../src/measure/minimum-zone.ts';
import { plateRows } from '../../src/measure/plate.ts';
import { EARNS_MM, LIFT_SHARE } from '../../src/measure/shim-search.ts';
import { shimPlan, type Shim } from '../../src/measure/shims.ts';
import { luckOf, places, readWith, someBed } from './shop-beds.ts';

const GAUGE_SD = 0.006;
const SCREWS = [
  { x: 30, y: 30 },
  { x: 570, y: 30 },
  { x: 30, y: 370 },
  { x: 570, y: 370 },
  { x: 300, y: 200 },
];

/** Least cost of all choices of single pieces or doubles, by trying every one; written apart from the search. */
function tryAll(
  heights: readonly Height[],
  screws: typeof SCREWS,
  lifts: readonly (readonly [number, number])[],
  worstFlat: number,
): number {
  const rows = plateRows(
    screws,
    heights.map(({ at }) => at),
  )!;
  let best = Infinity;
  const count = lifts.length ** screws.length;
  for (let code = 0; code < count; code++) {
    const chosen = screws.map(
      (_, j) => lifts[Math.floor(code / lifts.length ** j) % lifts.length]!,
    );
    const after = heights.map(({ at, heightMm }, i) => ({
      at,
      heightMm: heightMm + chosen.reduce((sum, [mm], j) => sum + mm * rows[i]![j]!, 0),
    }));
    const cost =
      rangeOf(after) +
      chosen.reduce((sum, [mm, pieces]) => sum + pieces * EARNS_MM + mm * LIFT_SHARE, 0);
    if (cost < best && minimumZone(after)!.flatnessMm <= worstFlat) best = cost;
  }
  return best;
}

/** Holds one shimming to what must be true of every plan; gives how much dearer it is than the best of all. */
export function shimLaws(seed: number, screwCount: 3 | 4 | 5): number {
  const luck = luckOf(seed);
  const heights = readWith(someBed(luck), places(4, 3), luck, GAUGE_SD);
  const stock: readonly Shim[] = [
    { name: 'paper', thickMm: 0.1, sdMm: 0.003, count: null },
    { name: 'card', thickMm: luck.uniform(0.2, 0.35), sdMm: 0.01, count: null },
  ];
  const screws = SCREWS.slice(0, screwCount);
  const [p, c] = [stock[0]!.thickMm, stock[1]!.thickMm];
  const flat = minimumZone(heights)!.flatnessMm;
  const limit = 1.5 * rangeOf(heights);
  const lifts = (
    [
      [0, 0],
      [p, 1],
      [2 * p, 2],
      [3 * p, 3],
      [c, 1],
      [c + p, 2],
      [c + 2 * p, 3],
      [2 * c, 2],
      [2 * c + p, 3],
      [3 * c, 3],
    ] as const
  ).filter(([mm]) => mm <= limit);
  const best = tryAll(heights, screws, lifts, flat + 2 * GAUGE_SD);
  const answer = shimPlan(heights, screws, stock, GAUGE_SD);
  if (answer.kind !== 'plan') {
    expect(answer.kind).toBe('leave alone');
    return rangeOf(heights) - best;
  }
  const { plan } = answer;
  expect(plan.expected.rangeMm).toBeLessThan(plan.before.rangeMm);
  expect(plan.expected.flatnessMm).toBeLessThanOrEqual(plan.before.flatnessMm + 2 * GAUGE_SD);
  const cost = plan.at.reduce(
    (sum, { stack }) => sum + stack.pieces.length * EARNS_MM + stack.thickMm * LIFT_SHARE,
    plan.expected.rangeMm,
  );
  // Never lifting more than needed: no kind lies under every screw, and each piece earns its keep.
  for (const { name } of stock)
    expect(plan.at.every(({ stack }) => stack.pieces.includes(name))).toBe(false);
  const rows = plateRows(
    screws,
    heights.map(({ at }) => at),
  )!;
  plan.at.forEach(({ stack }, j) => {
    for (const piece of stack.pieces) {
      const thin = stock.find(({ name }) => name === piece)!.thickMm;
      const without = plan.after.map(({ at, heightMm }, i) => ({
        at,
        heightMm: heightMm - thin * rows[i]![j]!,
      }));
      const worse = rangeOf(without) - plan.expected.rangeMm;
      if (minimumZone(without)!.flatnessMm <= flat + 2 * GAUGE_SD)
        expect(worse).toBeGreaterThan(EARNS_MM - 1e-9);
    }
  });
  return cost - best;
}

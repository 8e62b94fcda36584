import { BATCH } from '../../src/num/batch.ts';
import { quantileOf } from '../../src/num/draw.ts';
import type { Job } from '../../src/job/job.ts';
import { deviationKey } from '../../src/setup/deviation.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import type { Comb, TurnRead } from '../../src/measure/test-piece.ts';
import { luckOf, type Luck } from './shop-beds.ts';

export type Place = { readonly x: number; readonly y: number };

/** A shop with known errors, out of the spreads of a job: turns blanks over and tells what came of it. */
export interface SimulatedShop {
  readonly luck: Luck;
  /** What was drawn for a deviation that stays. */
  readonly truth: (key: string) => number;
  /** Turns one blank over: how far the back lies off the front at each place. `dialled` is added to the second zero in the machine. */
  readonly turn: (
    part: number,
    dialled?: readonly [number, number],
  ) => (place: number) => readonly [number, number];
  /** What a caliper without error reads along X of a part, over its nominal length. */
  readonly longer: (part: number) => number;
}

const STAYS = ['shop', 'power-up', 'setup'];

/** Misalignment at every place; what stays is drawn once, what comes with a part once for each part, the rest at every turn. */
export function simulatedShop(job: Job, places: readonly Place[], seed: number): SimulatedShop {
  const probe: Job = {
    ...job,
    needs: places.map((at, k) => ({ kind: 'misalignment', name: `place ${k}`, at, withinMm: 1 })),
  };
  const misfit = misfitModel(probe, true);
  const sources = sourcesOf(probe, misfit.deviations);
  const luck = luckOf(seed);
  const draw = (distribution: (typeof sources)[number]['distribution']): number =>
    quantileOf(distribution)(luck.uniform(1e-9, 1 - 1e-9));
  const kept = new Map<number, number>();
  const parts = new Map<number, Map<number, number>>();
  // One trial at a time: the columns are used over again.
  const draws = new Float64Array(misfit.deviations.length * BATCH);
  const out = new Float64Array(misfit.outputCount * BATCH);
  for (const { distribution, recurs, deviations } of sources)
    if (STAYS.includes(recurs)) for (const k of deviations) kept.set(k, draw(distribution));
  const partOf = (part: number): Map<number, number> => {
    const known = parts.get(part);
    if (known !== undefined) return known;
    const drawn = new Map<number, number>();
    for (const { distribution, recurs, deviations } of sources)
      if (recurs === 'part') for (const k of deviations) drawn.set(k, draw(distribution));
    parts.set(part, drawn);
    return drawn;
  };
  const columnOf = (key: string): number =>
    misfit.deviations.findIndex((one) => deviationKey(one) === key);
  return {
    luck,
    truth: (key) => {
      const index = columnOf(key);
      if (index < 0 || !kept.has(index)) throw new Error(`${key} does not stay in this shop`);
      return kept.get(index)!;
    },
    longer: (part) => partOf(part).get(columnOf('width')) ?? 0,
    turn: (part, dialled = [0, 0]) => {
      draws[columnOf('dialled/x') * BATCH] = dialled[0];
      draws[columnOf('dialled/y') * BATCH] = dialled[1];
      for (const [k, value] of [...kept, ...partOf(part)]) draws[k * BATCH] = value;
      for (const { distribution, recurs, deviations } of sources)
        if (recurs !== 'part' && !STAYS.includes(recurs))
          for (const k of deviations) draws[k * BATCH] = draw(distribution);
      misfit.evaluate(draws, 1, out);
      const found = Array.from({ length: 2 * places.length }, (_, k) => out[k * BATCH]!);
      return (place) => [found[2 * place]!, found[2 * place + 1]!];
    },
  };
}

export const COMBS: readonly (Place & { readonly along: 'x' | 'y' })[] = [
  { along: 'x', x: 20, y: 4 },
  { along: 'x', x: 260, y: 4 },
  { along: 'x', x: 140, y: 176 },
  { along: 'y', x: 4, y: 30 },
  { along: 'y', x: 4, y: 150 },
  { along: 'y', x: 276, y: 90 },
];

export const WALL = 12;

/** Combs as a caliper reads them: both walls lose the growth of the slots, and the caliper has a zero of its own. */
export function readCombs(
  off: (place: number) => readonly [number, number],
  luck: Luck,
  caliper: { readonly sdMm: number; readonly zeroMm: number; readonly growthMm: number },
  combs: readonly (typeof COMBS)[number][] = COMBS,
): TurnRead {
  return {
    combs: combs.map((comb): Comb => {
      const place = COMBS.indexOf(comb);
      const m = off(place)[comb.along === 'x' ? 0 : 1];
      const wall = WALL - 2 * caliper.growthMm + caliper.zeroMm;
      return {
        along: comb.along,
        at: { x: comb.x, y: comb.y },
        t1Mm: wall + m + luck.normal(caliper.sdMm),
        t2Mm: wall - m + luck.normal(caliper.sdMm),
        sdMm: caliper.sdMm,
      };
    }),
  };
}

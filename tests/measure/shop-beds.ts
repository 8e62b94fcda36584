import { uniformOf, streamOf } from '../../src/num/stream.ts';
import { normalQuantile } from '../../src/num/normal-quantile.ts';
import type { Height } from '../../src/measure/bed-plane.ts';

export interface Luck {
  readonly uniform: (low: number, high: number) => number;
  readonly normal: (sd: number) => number;
}

/** Luck with an address, so that a failing case can be had again. */
export function luckOf(seed: number): Luck {
  const stream = streamOf(seed, 77, 0, 0);
  const next = (): number => uniformOf(stream());
  return {
    uniform: (low, high) => low + (high - low) * next(),
    normal: (sd) => sd * normalQuantile(next()),
  };
}

/** Places in rows over a board of 600 by 400. */
export const places = (nx: number, ny: number): readonly { x: number; y: number }[] =>
  Array.from({ length: nx * ny }, (_, k) => ({
    x: 40 + (520 * (k % nx)) / (nx - 1),
    y: 30 + (340 * Math.floor(k / nx)) / (ny - 1),
  }));

export interface TrueBed {
  readonly leanX: number;
  readonly leanY: number;
  readonly bowMm: number;
  readonly twist: number;
}

export function someBed(luck: Luck): TrueBed {
  return {
    leanX: luck.normal(0.4 / 300),
    leanY: luck.normal(0.4 / 300),
    bowMm: luck.uniform(-0.15, 0.15),
    twist: luck.normal(1e-6),
  };
}

export const heightOf = (bed: TrueBed, { x, y }: { x: number; y: number }): number =>
  bed.leanX * (x - 300) +
  bed.leanY * (y - 200) +
  bed.bowMm * (1 - ((x - 300) / 300) ** 2) +
  bed.twist * (x - 300) * (y - 200);

export const readWith = (
  bed: TrueBed,
  at: readonly { x: number; y: number }[],
  luck: Luck,
  gaugeSd: number,
): readonly Height[] =>
  at.map((place) => ({ at: place, heightMm: heightOf(bed, place) + luck.normal(gaugeSd) }));

export const BOARD = { xMm: 600, yMm: 400 };

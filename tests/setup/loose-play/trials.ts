import { BATCH } from '../../../src/num/batch.ts';
import type { Job } from '../../../src/job/job.ts';
import { newColumns } from '../../../src/setup/columns.ts';
import { deviationKey } from '../../../src/setup/deviation.ts';
import { turnOverOf } from '../../../src/setup/turnover.ts';
import type { Off } from '../misalign.ts';

type XY = readonly [number, number];

/** How a blank came to lie in the back-up placing: its turn in the layout, and the misalignment at a place. */
export interface Lain {
  readonly sine: number;
  /** Back less front, blank frame, mm. */
  readonly at: (x: number, y: number) => XY;
}

const ARM_MM = 100;

/**
 * Many back-up placings of one job, everything off as told, each with its own three shares of 0 to 1 for turn, row and
 * place on it, by the production model. The front-up placing takes up nothing unless `off` says so.
 */
export function lainBy(
  job: Job,
  off: Off,
  count: number,
  shares: (index: number) => readonly [number, number, number],
): readonly Lain[] {
  const columns = newColumns();
  const model = turnOverOf(job, columns);
  const places = [
    { x: 0, y: 0 },
    { x: ARM_MM, y: 0 },
    { x: 0, y: ARM_MM },
  ];
  const cuts = places.map((at) => [
    model.landing('front', 'front', at),
    model.landing('back', 'back', at),
  ]);
  const keys = columns.asked().map(deviationKey);
  const draws = new Float64Array(keys.length * BATCH);
  const column = (key: string): number => {
    const index = keys.indexOf(key);
    if (index < 0) throw new Error(`the job does not use ${key}`);
    return index * BATCH;
  };
  for (const [key, value] of Object.entries(off)) draws[column(key)] = value;
  const parts = ['turn', 'across', 'along'].map((part) =>
    keys.includes(`take-up/back-up/${part}`) ? column(`take-up/back-up/${part}`) : null,
  );
  return Array.from({ length: count }, (_, index) => {
    const point = shares(index);
    parts.forEach((at, k) => {
      if (at !== null) draws[at] = point[k]! - 0.5;
    });
    model.lay(draws, 0);
    const [origin, right, up] = cuts.map(([front, back]) => {
      front!.locate(draws, 0);
      back!.locate(draws, 0);
      return [back!.x() - front!.x(), back!.y() - front!.y()] as const;
    });
    const [xx, yx] = [(right![0] - origin![0]) / ARM_MM, (right![1] - origin![1]) / ARM_MM];
    const [xy, yy] = [(up![0] - origin![0]) / ARM_MM, (up![1] - origin![1]) / ARM_MM];
    return {
      // Mirrored in x or y, the blank sees the layout's turn as it is: the cut turns the other way, and back by the mirror.
      sine: yx,
      at: (x, y) => [origin![0] + xx * x + xy * y, origin![1] + yx * x + yy * y],
    };
  });
}

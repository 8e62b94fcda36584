import type { Pooled } from './pooled.ts';
import { pooled } from './pooled.ts';
import type { SquareReading, Told } from './squareness.ts';
import { toldBy } from './squareness.ts';

/** What all readings together tell of one thing, and each reading's own say, the best known first. */
export interface Found {
  readonly what: Told['what'];
  readonly all: Pooled;
  readonly ways: readonly {
    readonly by: SquareReading['by'];
    readonly told: Told;
    /** Part that it has in the mean, 0..1. */
    readonly weight: number;
  }[];
}

const ORDER: readonly Told['what'][] = ['lean', 'scale-x', 'scale-y', 'scale-difference'];

/** A way that is mixed up with the fence's angle has no part in the mean when another is not. */
export function machineGeometry(readings: readonly SquareReading[]): readonly Found[] {
  const all = readings.flatMap((reading) =>
    toldBy(reading).map((told) => ({ by: reading.by, told })),
  );
  return ORDER.flatMap((what): Found[] => {
    const ways = all.filter(({ told }) => told.what === what);
    if (ways.length === 0) return [];
    const clear = ways.filter(({ told }) => told.mixedWith === null);
    const counted = clear.length > 0 ? clear : ways;
    const total = counted.reduce((sum, { told }) => sum + told.estimate.sd ** -2, 0);
    return [
      {
        what,
        all: pooled(counted.map(({ told }) => told.estimate)),
        ways: ways
          .map((way) => ({
            ...way,
            weight: counted.includes(way) ? way.told.estimate.sd ** -2 / total : 0,
          }))
          .sort((a, b) => a.told.estimate.sd - b.told.estimate.sd),
      },
    ];
  });
}

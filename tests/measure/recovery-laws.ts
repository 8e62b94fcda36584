import { expect } from 'vitest';
import type { Job } from '../../src/job/job.ts';
import { offsetAt } from '../../src/measure/dial-in.ts';
import { half95 } from '../../src/measure/estimate.ts';
import { placingAt } from '../../src/measure/test-piece.ts';
import { pieceErrors } from '../../src/measure/piece-errors.ts';
import { FLAT6, plainJob, spread } from '../setup/plain-job.ts';
import { COMBS, readCombs, simulatedShop, WALL } from './simulated-shop.ts';

const rectangular = (half: number, recurs: 'shop' | 'setup' | 'part') => ({
  ...spread({ kind: 'rectangular', low: -half, high: half }),
  recurs,
});

/** A shop out by what shops are out by: stops set by hand, a leaning machine, chips, blanks of many lengths. */
export function someJob(): Job {
  const base = plainJob();
  return plainJob({
    features: [],
    blank: { ...base.blank, widthSpread: rectangular(0.3, 'part') },
    stops: {
      ...base.stops,
      made: {
        kind: 'set-by-hand',
        angle: rectangular(0.3 / 200, 'setup'),
        square: spread({ kind: 'exactly', value: 0 }),
        spacing: spread({ kind: 'exactly', value: 0 }),
      },
      seatGap: { ...spread({ kind: 'half-normal', sigma: 0.02 }), recurs: 'placing' },
    },
    zero: {
      ...base.zero,
      frontUp: {
        ...base.zero.frontUp,
        xy: {
          kind: 'stops',
          at: null,
          tool: { name: 'pin', spread: rectangular(0.1, 'setup') },
        },
      },
    },
    shop: {
      ...base.shop,
      cutters: [FLAT6],
      machine: {
        ...base.shop.machine,
        lean: rectangular(0.3 / 200, 'shop'),
        repeatability: { ...spread({ kind: 'normal', mean: 0, sd: 0.008 }), recurs: 'feature' },
      },
    },
  });
}

const CALIPER = { sdMm: 0.02, zeroMm: 0.03, growthMm: 0.04 };
const TARGET = { x: 120, y: 70 };

export interface Recovered {
  readonly leanOff: number;
  readonly leanHeld: boolean;
  readonly shiftHeld: boolean;
  /** Off the front before and after dialling in, of later parts of the measured length. */
  readonly before: readonly number[];
  readonly after: readonly number[];
  readonly promisedHeld: readonly boolean[];
  /** Squares along X: what the turns promise of later parts, and what those came to. */
  readonly promisedSquare: number;
  readonly seenSquare: number;
}

/** One simulated shop: some turns over are read, the offsets dialled in, and parts are made. */
export function recovered(seed: number, turnCount: number): Recovered {
  const job = someJob();
  const places = [...COMBS, TARGET];
  const shop = simulatedShop(job, places, seed);
  const turns = Array.from({ length: turnCount }, () =>
    readCombs(shop.turn(0), shop.luck, CALIPER),
  );
  const errors = pieceErrors(turns, WALL, 'about-y');
  const gamma = shop.truth('machine-lean');
  const lean = errors.lean!;
  // Offsets in the machine; back second, turned about Y: X of the blank runs against the machine's.
  const x = offsetAt(job, errors.x!, TARGET);
  const y = offsetAt(job, errors.y!, TARGET);
  expect(errors.growth!.value + CALIPER.zeroMm / 2).toBeLessThan(CALIPER.growthMm + 0.03);
  // The same piece again stands for a part whose length was calipered: part draws stay.
  const made = Array.from({ length: 20 }, () => shop.turn(0)(COMBS.length));
  const radius = ([mx, my]: readonly [number, number]): number => Math.hypot(mx, my);
  const corrected = made.map(([mx, my]): [number, number] => [
    mx - x.estimate.value,
    my + y.estimate.value,
  ]);
  // What the place is off on average, by many turns.
  const many = Array.from({ length: 400 }, () => shop.turn(0)(COMBS.length)[0]);
  const truth = many.reduce((sum, one) => sum + one, 0) / many.length;
  return {
    leanOff: (lean.value - gamma) / lean.sd,
    leanHeld: Math.abs(lean.value - gamma) < half95(lean),
    shiftHeld: Math.abs(x.estimate.value - truth) < half95(x.estimate),
    before: made.map(radius),
    after: corrected.map(radius),
    promisedSquare: x.estimate.sd ** 2 + (placingAt(errors.x!, TARGET)?.sd ?? NaN) ** 2,
    seenSquare: corrected.reduce((sum, [mx]) => sum + mx * mx, 0) / corrected.length,
    promisedHeld: corrected.map(([mx]) => Math.abs(mx) < x.nextHalf95),
  };
}

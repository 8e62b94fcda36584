import { describe, expect, it } from 'vitest';
import { quantileOf } from '../../src/num/draw.ts';
import { radiusFrom } from '../../src/measure/cutter-radius.ts';
import { half95 } from '../../src/measure/estimate.ts';
import { pieceErrors } from '../../src/measure/piece-errors.ts';
import type { Comb } from '../../src/measure/test-piece.ts';
import { spread } from '../setup/plain-job.ts';
import { luckOf } from './shop-beds.ts';
import { COMBS, WALL } from './simulated-shop.ts';

const PUSH = {
  ...spread({ kind: 'rectangular', low: 0, high: 0.05 }),
  recurs: 'feature' as const,
};

/** A cutter that is off by `radius`, pushed off the walls of each slot by its own amount: combs, and later cuts. */
function shop(seed: number, radius: number) {
  const luck = luckOf(seed);
  const cut = (): number => radius - quantileOf(PUSH.distribution)(luck.uniform(1e-6, 1 - 1e-6));
  const combs = COMBS.map(({ along, x, y }): Comb => {
    // Front, back, front: each wall loses the growth of the two slots beside it.
    const [a, b, c] = [cut(), cut(), cut()];
    return {
      along,
      at: { x, y },
      t1Mm: WALL - a - b + luck.normal(0.015),
      t2Mm: WALL - b - c + luck.normal(0.015),
      sdMm: 0.015,
    };
  });
  const growth = pieceErrors([{ combs }], WALL, 'about-y').growth!;
  return { growth, told: radiusFrom(growth, PUSH), cut };
}

describe('the radius of a cutter from the slots of a test piece', () => {
  it('is that of the cutter, and its push-off is not counted twice in the next cuts', () => {
    const shops = 200;
    let [held, predicted, seen, asItWas] = [0, 0, 0, 0];
    for (let seed = 0; seed < shops; seed++) {
      const radius = luckOf(9000 + seed).uniform(-0.03, 0.03);
      const { growth, told, cut } = shop(seed, radius);
      if (Math.abs(told.value - radius) < half95(told)) held++;
      // What a prediction makes of it: the radius less a push-off in every cut, 0.025 on average.
      predicted += (told.value - 0.025) / shops;
      asItWas += (growth.value - 0.025) / shops;
      seen += cut() / shops;
    }
    expect(held / shops).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / shops));
    // Four standard errors of the mean of single cuts: scatter 0.0144 and estimates of about 0.01.
    const four = (4 * 0.018) / Math.sqrt(shops);
    expect(Math.abs(predicted - seen)).toBeLessThan(four);
    // The growth itself in place of the radius would miss by the whole push-off.
    expect(Math.abs(asItWas - seen)).toBeGreaterThan(0.02);
  });

  it('is less sure where the push-off stays the same', () => {
    const growth = { value: 0.01, sd: 0.004, dof: 5 };
    const stays = radiusFrom(growth, { ...PUSH, recurs: 'shop' });
    // Closed form: rectangular over 0.05, sd 0.05 / root 12.
    expect(stays.sd).toBeCloseTo(Math.hypot(0.004, 0.05 / Math.sqrt(12)), 12);
    expect(stays.value).toBeCloseTo(0.035, 12);
    expect(radiusFrom(growth, PUSH).sd).toBe(0.004);
  });
});

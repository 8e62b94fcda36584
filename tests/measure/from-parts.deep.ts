import { describe, expect, it } from 'vitest';
import { half95 } from '../../src/measure/estimate.ts';
import { loggedJob, loggedShop } from './from-parts-laws.ts';

const SHOPS = 150;

describe('finished parts of hundreds of simulated shops', () => {
  it.each([2, 6])(
    '%d of them tell of the shop within what they say, and better than was known',
    (parts) => {
      const job = loggedJob();
      const all = Array.from({ length: SHOPS }, (_, k) => loggedShop(job, 21_000 + k, parts));
      const learnt = all.flatMap(({ told, truth }) =>
        told.kind === 'learnt' ? told.figures.map((one) => ({ ...one, truth: truth(one.of) })) : [],
      );
      // Set-ups that nothing explains are one in a thousand.
      expect(all.filter(({ told }) => told.kind === 'not explained').length).toBeLessThanOrEqual(3);
      for (const of of ['machine.lean', 'bed.lean-x', 'cutters.flat 6.radius']) {
        const some = learnt.filter((one) => one.of === of);
        expect(some.length, of).toBeGreaterThan(0.95 * SHOPS);
        const held = some.filter(
          ({ after, truth }) => Math.abs(after.value - truth) < half95(after),
        ).length;
        expect(held / some.length, of).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / SHOPS));
        const far = some.filter(({ after, truth }) => Math.abs(after.value - truth) > 4 * after.sd);
        expect(far.length / some.length, of).toBeLessThan(parts === 2 ? 0.03 : 0.01);
        const rms = (off: (one: (typeof some)[number]) => number): number =>
          Math.sqrt(some.reduce((sum, one) => sum + off(one) ** 2, 0) / some.length);
        expect(
          rms(({ after, truth }) => after.value - truth),
          of,
        ).toBeLessThan(0.9 * rms(({ before, truth }) => before.value - truth));
      }
    },
  );
});

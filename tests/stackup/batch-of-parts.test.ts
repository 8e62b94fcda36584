import { describe, expect, it } from 'vitest';
import type { Job, Recurrence } from '../../src/job/job.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { predict } from '../../src/stackup/predict.ts';
import type { Prediction } from '../../src/stackup/prediction.ts';
import { plainJob, spread } from '../setup/plain-job.ts';

const N = 10_000;
const COUNT = 5;

/** At one corner the miss is the error of the blank's length: 0.9 of a rectangular ±0.4 is within 0.36. */
function predicted(recurs: Recurrence, count: number): Prediction {
  const plain = plainJob();
  const job: Job = {
    ...plain,
    blank: {
      ...plain.blank,
      widthSpread: { ...spread({ kind: 'rectangular', low: -0.4, high: 0.4 }), recurs },
    },
    parts: { count, order: 'each-in-turn' },
    needs: [{ kind: 'misalignment', name: 'corner', at: { x: 70, y: 120 }, withinMm: 0.36 }],
  };
  const misfit = misfitModel(job);
  return predict(job.name, misfit, sourcesOf(job, misfit.deviations), { seed: 3, trials: N });
}

describe('a batch of parts', () => {
  it.each(['part', 'placing', 'feature'] as const)(
    'all come out right with the chance of one to the power of their number, where %s is all that is off',
    (recurs) => {
      const { batch } = predicted(recurs, COUNT);
      expect(Math.abs(batch.onePart - 0.9)).toBeLessThan(4 * Math.sqrt((0.9 * 0.1) / N));
      expect(Math.abs(batch.allGood! - 0.9 ** COUNT)).toBeLessThan(4 * batch.allGoodSe!);
      expect(batch.expectedBad).toBeCloseTo(COUNT * (1 - batch.onePart), 12);
    },
  );

  it.each(['shop', 'power-up', 'setup'] as const)(
    'all come out right or none, where %s is all that is off',
    (recurs) => {
      const { batch } = predicted(recurs, COUNT);
      expect(batch.trials).toBe(N);
      expect(batch.allGood).toBe(batch.onePart);
    },
  );

  it('tells the rest once the first was found good: no news of blanks, all the news of a set-up', () => {
    const each = predicted('part', COUNT).batch.rest!;
    expect(Math.abs(each.firstGood!.chance - 0.9 ** 4)).toBeLessThan(4 * each.firstGood!.se);
    expect(predicted('setup', COUNT).batch.rest!.firstGood!.chance).toBe(1);
    expect(predicted('part', 1).batch.rest).toBeNull();
  });

  it('tells the rest when the first is measured and corrected: a set-up is dialled out, scatter is dialled in', () => {
    expect(predicted('setup', COUNT).batch.rest!.firstCorrected!.chance).toBe(1);
    // Blanks only: the other four miss by the difference of their length and the first's, both rectangular on
    // -0.4..0.4: the mean over the first of P(|w - w1| <= 0.36)^4, by 8000 steps (derived here).
    let exact = 0;
    for (let k = 0; k < 8000; k++) {
      const first = -0.4 + (0.8 * (k + 0.5)) / 8000;
      const held = Math.min(0.4, first + 0.36) - Math.max(-0.4, first - 0.36);
      exact += (held / 0.8) ** 4 / 8000;
    }
    expect(exact).toBeLessThan(0.5 * 0.9 ** 4);
    const corrected = predicted('part', COUNT).batch.rest!.firstCorrected!;
    expect(Math.abs(corrected.chance - exact)).toBeLessThan(4 * corrected.se);
  });

  it('of one is that part, and more parts change nothing of the first', () => {
    const [one, many] = [predicted('part', 1), predicted('part', COUNT)];
    expect(one.batch).toMatchObject({ partCount: 1, allGood: one.needs[0]!.chance });
    expect(many.needs).toEqual(one.needs);
  });

  it('is drawn less often the more parts it has', () => {
    expect(predicted('part', 1000).batch.trials).toBe(100);
    expect(() => predicted('part', 1001)).toThrow('1 to 1000 parts, not 1001');
  });
});

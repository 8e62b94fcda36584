// JCGM 101:2008, 7.9 on every number, through the whole engine.
import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/job/job.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { chanceDigits, digitsOf } from '../../src/stackup/digits.ts';
import { blockTrialsOf, planOf } from '../../src/stackup/plan.ts';
import { predict, type PredictOptions } from '../../src/stackup/predict.ts';
import { startPredicting } from '../../src/stackup/predicting.ts';
import type { Prediction } from '../../src/stackup/prediction.ts';
import type { BlockTally } from '../../src/stackup/tally.ts';
import { plainJob, spread } from '../setup/plain-job.ts';

/** The miss at a corner is the error of the blank's length: its size is rectangular on 0..0.4. */
const job: Job = plainJob({
  needs: [{ kind: 'misalignment', name: 'corner', at: { x: 70, y: 120 }, withinMm: 0.25 }],
  blank: {
    ...plainJob().blank,
    widthSpread: spread({ kind: 'rectangular', low: -0.4, high: 0.4 }),
  },
});

function predicted(options: PredictOptions): Prediction {
  const misfit = misfitModel(job);
  return predict(job.name, misfit, sourcesOf(job, misfit.deviations), options);
}

describe('blocks of trials', () => {
  it('are those of the standard where there is room for ten, else smaller ones', () => {
    expect(planOf(1, 1_000_000)).toMatchObject({ batchTrials: 1024, blockBatches: 10 });
    for (const trials of [10, 999, 2_000, 10_239, 10_240, 30_000, 102_399, 102_400, 5_000_000]) {
      const plan = planOf(1, trials);
      expect(plan.mostBlocks).toBeGreaterThanOrEqual(10);
      expect(plan.mostBlocks * blockTrialsOf(plan)).toBeLessThanOrEqual(trials);
      expect(plan.mostBlocks * blockTrialsOf(plan)).toBeGreaterThan(0.9 * trials);
    }
  });
});

describe('trials', () => {
  it('end when the digits asked are certain, and the digits are right', () => {
    const one = predicted({ seed: 1, trials: 1_000_000, digits: 1 });
    expect(one.ended).toBe('digits');
    expect(one.trials).toBeLessThan(200_000);
    const [need] = one.needs;
    expect(
      Math.min(...Object.values<number>({ ...need!.digits }), need!.chanceDigits),
    ).toBeGreaterThanOrEqual(1);
    // Exact: mean 0.2, sd 0.4 / sqrt 12, ends 0.01 and 0.39, chance 0.625 (derived); one digit of 0.115 is
    // good to 0.05, of the 0.375 bad ones to 0.05.
    for (const [found, exact, sure] of [
      [need!.mean, 0.2, need!.sure.mean],
      [need!.sd, 0.4 / Math.sqrt(12), need!.sure.sd],
      [need!.interval95[0], 0.01, need!.sure.low],
      [need!.interval95[1], 0.39, need!.sure.high],
    ] as const) {
      expect(Math.abs(found - exact)).toBeLessThan(0.05);
      expect(Math.abs(found - exact)).toBeLessThan(1.5 * sure);
    }
  });

  it('end where there are enough of them, short of the digits, and say so', () => {
    const few = predicted({ seed: 1, trials: 2_000, digits: 3 });
    expect(few).toMatchObject({ ended: 'trials', trials: 2_000, digitsAsked: 3 });
    expect(few.needs[0]!.digits.high).toBeLessThan(3);
  });

  it('that ended early come to the same bytes when just so many are asked for', () => {
    const early = predicted({ seed: 6, trials: 400_000, digits: 1 });
    expect(early.trials).toBeLessThan(400_000);
    expect(predicted({ seed: 6, trials: early.trials, digits: 1 })).toEqual(early);
  });

  it('come to the same whatever blocks were worked ahead or elsewhere', () => {
    const misfit = misfitModel(job);
    const sources = sourcesOf(job, misfit.deviations);
    const options = { seed: 3, trials: 20_000 };
    const under = startPredicting(job.name, misfit, sources, options);
    const tallies: BlockTally[] = [];
    for (let block = under.task.mostBlocks - 1; block >= 0; block--)
      tallies.unshift(structuredClone(under.work(block)));
    for (const tally of tallies) under.take(tally);
    expect(under.ended()).toBe('trials');
    expect(under.finish('trials')).toEqual(predict(job.name, misfit, sources, options));
  });

  it('stopped early tell what is known', () => {
    const misfit = misfitModel(job);
    const under = startPredicting(job.name, misfit, sourcesOf(job, misfit.deviations), {
      seed: 1,
      trials: 30_000,
    });
    under.take(under.work(0));
    under.take(under.work(1));
    expect(under.progress()).toMatchObject({ blocks: 2, digits: 0, digitsAsked: 2 });
    const said = under.finish('interrupted');
    expect(said).toMatchObject({ ended: 'interrupted', trials: under.progress().trials });
    // Two blocks say next to nothing of themselves.
    expect(said.needs[0]!.digits.high).toBeLessThan(2);
    expect(Math.abs(said.needs[0]!.mean - 0.2)).toBeLessThan((4 * 0.115) / Math.sqrt(said.trials));
  });
});

describe('digits', () => {
  it('are counted as the standard does, and those of a chance on its small side', () => {
    expect(digitsOf(0.0754, 5e-4)).toBe(2);
    expect(digitsOf(0.0754, 5.1e-4)).toBe(1);
    expect(digitsOf(0.0754, 0.06)).toBe(0);
    expect(digitsOf(0, 0)).toBe(4);
    // 0.4 % bad, sure to 0.05 %: one digit; 99.6 % good would have seemed to have three.
    expect(chanceDigits(0.996, 0.0005, [0.995, 0.997])).toBe(1);
    expect(chanceDigits(0.996, 0.000049, [0.9959, 0.9961])).toBe(2);
    expect(chanceDigits(1, 0.001, [0.9991, 1])).toBe(4);
    expect(chanceDigits(1, 0.001, [0.998, 1])).toBe(0);
  });
});

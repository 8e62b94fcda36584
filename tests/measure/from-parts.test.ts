import { describe, expect, it } from 'vitest';
import { learntFromParts, type PartsFigure } from '../../src/measure/from-parts.ts';
import type { StopsJob } from '../../src/job/job.ts';
import { spread } from '../setup/plain-job.ts';
import { loggedJob, loggedShop } from './from-parts-laws.ts';

const figure = (values: readonly number[], need = 'opening', gaugeSd = 0.005): PartsFigure => ({
  need,
  axis: null,
  values: new Map(values.map((value, k) => [k + 1, value])),
  gaugeSd,
});

describe('what finished parts tell of the shop', () => {
  const job = loggedJob();

  it('is the closed form where one figure hangs on one source', () => {
    // opening = 30 + 2 (radius - push); radius within 0.02 either way, push-off 0..0.03 in each cut.
    const nil = spread({ kind: 'exactly', value: 0 });
    // A lean either way would make the opening wider: that is not straight, and left out here.
    const straight: StopsJob = {
      ...job,
      stops: { ...job.stops, made: { kind: 'set-by-hand', angle: nil, square: nil, spacing: nil } },
      shop: { ...job.shop, machine: { ...job.shop.machine, lean: nil } },
    };
    const told = learntFromParts(straight, [figure([29.95, 29.95])]);
    if (told.kind !== 'learnt') throw new Error(told.kind);
    const radius = told.figures.find(({ of }) => of === 'cutters.flat 6.radius')!;
    const prior = 0.04 ** 2 / 12;
    const push = 0.03 ** 2 / 12;
    // What repeatability and scale add is below a thousandth of it; a size does not hang on where it lies.
    const noise = (4 * push) / 2 + 0.005 ** 2;
    const gain = (2 * prior) / (4 * prior + noise);
    expect(radius.after.value).toBeCloseTo(gain * (29.95 - (30 - 2 * 0.015)), 3);
    expect(radius.after.sd).toBeCloseTo(Math.sqrt(prior - gain * 2 * prior), 3);
    expect(radius.isTold).toBe(true);
    expect(radius.before.sd).toBeCloseTo(Math.sqrt(prior), 12);
  });

  it('is less by few parts that scatter more than predicted: t, and two give no more than two can', () => {
    const wide = (values: readonly number[]) => {
      const told = learntFromParts(job, [figure(values)]);
      if (told.kind !== 'learnt') throw new Error(told.kind);
      return told.figures.find(({ of }) => of === 'cutters.flat 6.radius')!;
    };
    const two = wide([29.9, 30.0]);
    expect(two.after.dof).toBe(1);
    expect(two.isTold).toBe(false);
    expect(wide([29.97, 29.971]).after.dof).toBe(Infinity);
  });

  it('is nothing when all that can be off cannot make such parts', () => {
    const { told } = loggedShop(job, 5, 4, 0.8);
    expect(told.kind).toBe('not explained');
  });

  it('is nothing of what does not hang on the shop, or is known exactly', () => {
    expect(learntFromParts(job, []).kind).toBe('nothing');
    expect(learntFromParts(job, [figure([1], 'no such need')]).kind).toBe('nothing');
    const exact = spread({ kind: 'exactly', value: 0 });
    const sure = {
      ...job,
      features: job.features.map((one) => ({
        ...one,
        cutter: { ...one.cutter, radiusError: exact },
      })),
      shop: {
        ...job.shop,
        cutters: job.shop.cutters.map((one) => ({ ...one, radiusError: exact })),
      },
    };
    const told = learntFromParts(sure, [figure([29.96, 29.97])]);
    const of = told.kind === 'learnt' ? told.figures.map((one) => one.of) : [];
    expect(of).not.toContain('cutters.flat 6.radius');
  });
});

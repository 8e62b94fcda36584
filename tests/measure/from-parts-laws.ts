import { BATCH } from '../../src/num/batch.ts';
import { quantileOf } from '../../src/num/draw.ts';
import type { Job, StopsJob } from '../../src/job/job.ts';
import { learntFromParts, type FromParts, type PartsFigure } from '../../src/measure/from-parts.ts';
import { deviationKey } from '../../src/setup/deviation.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { FLAT6, plainJob, spread } from '../setup/plain-job.ts';
import { someJob } from './recovery-laws.ts';
import { luckOf } from './shop-beds.ts';

const within = (half: number) => spread({ kind: 'rectangular', low: -half, high: half });

/** A job whose parts tell of lean, cutter and bed: two offsets, an opening, two depths. */
export function loggedJob(): StopsJob {
  const base = someJob() as StopsJob;
  const cutter = {
    ...FLAT6,
    radiusError: { ...within(0.02), recurs: 'shop' as const },
    pushOff: {
      ...spread({ kind: 'rectangular', low: 0, high: 0.03 }),
      recurs: 'feature' as const,
    },
  };
  const pocket = (name: string, x: number, y: number) => ({
    name,
    face: 'front' as const,
    shape: { kind: 'rectangle' as const, widthMm: 30, heightMm: 20, cornerRadiusMm: 3 },
    at: { x, y },
    turnedRad: 0,
    cut: 'pocket' as const,
    depthMm: 6,
    through: false,
    cutter,
  });
  return plainJob({
    ...base,
    features: [pocket('left', 40, 90), pocket('right', 240, 90)],
    blank: { ...base.blank, thickSpread: { ...within(0.02), recurs: 'part' } },
    shop: {
      ...base.shop,
      cutters: [cutter],
      bed: {
        ...base.shop.bed,
        leanX: { ...within(0.2 / 200), recurs: 'shop' },
        leanY: { ...within(0.2 / 200), recurs: 'shop' },
      },
    },
    needs: [
      { kind: 'misalignment', name: 'low', at: { x: 140, y: 20 }, withinMm: 0.3 },
      { kind: 'misalignment', name: 'high', at: { x: 140, y: 160 }, withinMm: 0.3 },
      {
        kind: 'size',
        name: 'opening',
        feature: 'left',
        along: 'x',
        limits: { lowMm: 29.9, highMm: 30.1 },
      },
      { kind: 'depth', name: 'left depth', feature: 'left', limits: { lowMm: 5.9, highMm: 6.1 } },
      { kind: 'depth', name: 'right depth', feature: 'right', limits: { lowMm: 5.9, highMm: 6.1 } },
    ],
  });
}

const STAYS = ['shop', 'power-up', 'setup'];
const GAUGE_SD = 0.012;

export interface LoggedShop {
  readonly told: FromParts;
  readonly truth: (of: string) => number;
}

const KEYS: Readonly<Record<string, string>> = {
  'machine.lean': 'machine-lean',
  'bed.lean-x': 'bed-lean/x',
  'bed.lean-y': 'bed-lean/y',
  'cutters.flat 6.radius': 'cutter-radius/flat 6',
};

/** A shop with known errors makes parts, and their figures are logged as a gauge reads them; `blunder` is added to every one. */
export function loggedShop(job: Job, seed: number, partCount: number, blunder = 0): LoggedShop {
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  const luck = luckOf(seed);
  const draws = new Float64Array(misfit.deviations.length * BATCH);
  const out = new Float64Array(misfit.outputCount * BATCH);
  const draw = (stays: boolean): void => {
    for (const { distribution, recurs, deviations } of sources)
      if (STAYS.includes(recurs) === stays)
        for (const k of deviations)
          draws[k * BATCH] = quantileOf(distribution)(luck.uniform(1e-9, 1 - 1e-9));
  };
  draw(true);
  const known = draws.slice();
  // A gauge is off by much the same in all its readings.
  const gauge = luck.normal(GAUGE_SD);
  const values = new Map<string, Map<number, number>>();
  for (let part = 1; part <= partCount; part++) {
    draw(false);
    misfit.evaluate(draws, 1, out);
    for (const judged of misfit.judged) {
      const of: readonly (readonly [string, number])[] =
        judged.shape === 'radial'
          ? [
              ['x', judged.x],
              ['y', judged.x + 1],
            ]
          : [['', judged.at]];
      for (const [axis, at] of of) {
        const key = `${judged.need.name}/${axis}`;
        if (!values.has(key)) values.set(key, new Map());
        values.get(key)!.set(part, out[at * BATCH]! + gauge + blunder);
      }
    }
  }
  const logged = [...values].map(([key, of]): PartsFigure => {
    const [need, axis] = key.split('/') as [string, 'x' | 'y' | ''];
    return { need, axis: axis === '' ? null : axis, values: of, gaugeSd: GAUGE_SD };
  });
  return {
    told: learntFromParts(job, logged),
    truth: (of) => {
      const k = misfit.deviations.findIndex((one) => deviationKey(one) === KEYS[of]);
      if (k < 0) throw new Error(`${of} is not in this shop`);
      return known[k * BATCH]!;
    },
  };
}

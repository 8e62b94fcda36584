import { BATCH } from '../../src/num/batch.ts';
import type { DialledIn, Job } from '../../src/job/job.ts';
import { atNominal, offsetAt, type Offset } from '../../src/measure/dial-in.ts';
import { half95 } from '../../src/measure/estimate.ts';
import { lengthFormulas } from '../../src/measure/length-formula.ts';
import { fieldOf } from '../../src/measure/test-piece.ts';
import { predictedModel } from '../../src/sources/predicted.ts';
import { modelOf } from '../../src/stackup/model-of.ts';
import { drawBatch } from '../../src/stackup/trials.ts';
import { COMBS, readCombs, simulatedShop } from './simulated-shop.ts';

const CALIPER = { sdMm: 0.02, zeroMm: 0.03, growthMm: 0.04 };
const LENGTH_SD = 0.015;
export const TARGET = { x: 120, y: 70 };

export interface Way {
  readonly turns: number;
  readonly isCalipered: boolean;
}

/** Squares of how far the back is off, X and Y, of one new part in each of many shops: as it comes, and dialled in. */
export interface Gain {
  readonly plain: number;
  readonly dialled: number;
  /** Share of parts within the limit. */
  readonly goodPlain: number;
  readonly goodDialled: number;
}

/** What comes of it: in each shop a test piece is turned, read and dialled in, and one new blank is made. */
export function seenGain(
  job: Job,
  { turns, isCalipered }: Way,
  shops: number,
  withinMm: number,
): Gain {
  const [formula] = lengthFormulas({ ...job, needs: needAt(withinMm) }).filter(
    ({ axis }) => axis === 'x',
  );
  let [plain, dialled, goodPlain, goodDialled] = [0, 0, 0, 0];
  for (let seed = 0; seed < shops; seed++) {
    const shop = simulatedShop(job, [...COMBS, TARGET], 40_000 + seed);
    const read = Array.from({ length: turns }, () => readCombs(shop.turn(0), shop.luck, CALIPER));
    const off = (axis: 'x' | 'y'): Offset => {
      const offset = offsetAt(job, fieldOf(read, axis)!, TARGET);
      if (!isCalipered || axis === 'y' || formula === undefined) return offset;
      const mm = formula.nominalMm + shop.longer(0) + shop.luck.normal(LENGTH_SD);
      return atNominal(offset, formula, { mm, sd: LENGTH_SD });
    };
    const length =
      isCalipered && formula !== undefined
        ? formula.factor * (shop.longer(1) + shop.luck.normal(LENGTH_SD))
        : 0;
    const [x, y] = [off('x').estimate.value + length, off('y').estimate.value];
    const before = shop.turn(1)(COMBS.length);
    const after = shop.turn(1, [x, y])(COMBS.length);
    plain += (before[0] ** 2 + before[1] ** 2) / shops;
    dialled += (after[0] ** 2 + after[1] ** 2) / shops;
    goodPlain += Math.hypot(...before) <= withinMm ? 1 / shops : 0;
    goodDialled += Math.hypot(...after) <= withinMm ? 1 / shops : 0;
  }
  return { plain, dialled, goodPlain, goodDialled };
}

/** What was predicted of it before anything was turned but the test piece. */
export function predictedGain(job: Job, way: Way, withinMm: number, batches = 20): Gain {
  const told = dialledIn(job, way);
  const needs = needAt(withinMm);
  const plain = squares({ ...job, needs }, withinMm, batches);
  const dialled = squares({ ...job, needs, dialled: told }, withinMm, batches);
  return {
    plain: plain.square,
    dialled: dialled.square,
    goodPlain: plain.good,
    goodDialled: dialled.good,
  };
}

const needAt = (withinMm: number): Job['needs'] => [
  { kind: 'misalignment', name: 'target', at: TARGET, withinMm },
];

/** What the readings of some shop leave in the correction file: only how well they are read counts. */
function dialledIn(job: Job, { turns, isCalipered }: Way): DialledIn {
  const shop = simulatedShop(job, [...COMBS, TARGET], 1);
  const read = Array.from({ length: turns }, () => readCombs(shop.turn(0), shop.luck, CALIPER));
  const axisOf = (axis: 'x' | 'y', calipered: number | null) => {
    const field = fieldOf(read, axis)!;
    const offset = offsetAt(job, field, TARGET);
    return {
      offsetMm: offset.estimate.value,
      half95Mm: half95(offset.estimate),
      readingMm: Math.hypot(offset.readingSd, calipered ?? 0),
      calipered,
    };
  };
  return {
    at: TARGET,
    // Where the length drops out nothing is calipered.
    x: axisOf('x', isCalipered && lengthFormulas(job).length > 0 ? LENGTH_SD : null),
    y: axisOf('y', null),
    turns,
    measured: '2026-11-21',
    file: '',
  };
}

function squares(
  job: Job,
  withinMm: number,
  batches: number,
): { readonly square: number; readonly good: number } {
  const { misfit, sources } = predictedModel(job);
  const model = modelOf(misfit, sources);
  const draws = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  let [square, good] = [0, 0];
  for (let batch = 0; batch < batches; batch++) {
    drawBatch(model, 11, batch, 1, draws);
    model.evaluate(draws, BATCH, out);
    for (let i = 0; i < BATCH; i++) {
      const [x, y] = [out[i]!, out[BATCH + i]!];
      square += (x * x + y * y) / (batches * BATCH);
      good += Math.hypot(x, y) <= withinMm ? 1 / (batches * BATCH) : 0;
    }
  }
  return { square, good };
}

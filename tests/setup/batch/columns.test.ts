import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job, StopsJob } from '../../../src/job/job.ts';
import { BATCH } from '../../../src/num/batch.ts';
import { deviationKey } from '../../../src/setup/deviation.ts';
import { misfitModel } from '../../../src/setup/misfit.ts';
import { randoms } from '../../plane/some-paths.ts';
import { spread } from '../plain-job.ts';
import { shopJob } from '../shop-job.ts';
import { setUp } from '../second-model/set-ups.ts';

// Whole batches at once against one trial at a time, which the second models are held against: not one bit may differ.

/** More than are seated together. */
const COUNT = 70;
const shop = shopJob();

/** A set-up with a local error of the axes, needs of columns and of trials, and now and then a zero at a hole. */
function jobOf(job: StopsJob, seed: number): Job {
  const hole = { ...shop.features[0]!, through: true };
  const firstIsFront = job.first === 'front';
  const bored = { ...hole, face: job.first };
  const other = {
    ...shop.features[1]!,
    face: firstIsFront ? ('back' as const) : ('front' as const),
  };
  const second = firstIsFront ? 'backUp' : 'frontUp';
  const { machine } = shop.shop;
  const local = { ...machine.local, spread: spread({ kind: 'normal', mean: 0, sd: 0.02 }) };
  const zero =
    seed % 4 === 0
      ? {
          ...job.zero,
          [second]: {
            ...job.zero[second],
            xy: {
              kind: 'hole',
              feature: hole.name,
              tool: { name: 'pin', spread: spread({ kind: 'exactly', value: 0 }) },
            },
          },
        }
      : job.zero;
  return {
    ...job,
    zero,
    features: [bored, other],
    shop: { ...job.shop, machine: { ...job.shop.machine, local } },
    blank: { ...job.blank, movesTogether: seed % 3 === 0 },
    needs: [
      ...shop.needs,
      {
        kind: 'wall',
        name: 'border',
        feature: other.name,
        to: 'lower',
        limits: { lowMm: 0, highMm: 900 },
      },
    ],
  };
}

/** Sizes as large as a shop's worst: leans, crooks and strains as pure numbers, the rest mm. */
function sizeOf(key: string): number {
  if (key.startsWith('crook')) return 2e-3;
  if (
    /^(movement|machine-lean|scale|cutter-lean|square|taper|bevel|fence-angle|stop-square)/.test(
      key,
    )
  )
    return 8e-3;
  return 0.4;
}

function drawsOf(keys: readonly string[], seed: number): Float64Array {
  const next = randoms(seed);
  const draws = new Float64Array(keys.length * BATCH);
  keys.forEach((key, k) => {
    const size = sizeOf(key);
    for (let i = 0; i < COUNT; i++)
      // The first trial has nothing off.
      draws[k * BATCH + i] =
        i === 0 ? 0 : key.startsWith('rock') ? next() : size * (2 * next() - 1);
  });
  return draws;
}

const differing = (job: Job, seed: number, withDial: boolean): readonly string[] => {
  const [quick, slow] = [misfitModel(job, withDial), misfitModel(job, withDial, true)];
  const keys = quick.deviations.map(deviationKey);
  expect(keys).toEqual(slow.deviations.map(deviationKey));
  const draws = drawsOf(keys, seed);
  const [one, other] = [quick, slow].map(
    ({ outputCount }) => new Float64Array(outputCount * BATCH),
  ) as [Float64Array, Float64Array];
  quick.evaluate(draws, COUNT, one);
  slow.evaluate(draws, COUNT, other);
  const found: string[] = [];
  one.forEach((value, k) => {
    if (!Object.is(value, other[k]))
      found.push(`${Math.floor(k / BATCH)}/${k % BATCH}: ${value} ${other[k]}`);
  });
  return found;
};

describe('batches of trials worked at once', () => {
  it('come to the bits of trial by trial, on 30 random set-ups on stops', () => {
    fc.assert(
      fc.property(setUp, fc.boolean(), ({ job, seed }, withDial) => {
        expect(differing(jobOf(job, seed), seed, withDial)).toEqual([]);
      }),
      { seed: 21, numRuns: 30 },
    );
  });

  it('tell different trials apart, so that equal bits say something', () => {
    const model = misfitModel(shop);
    const out = new Float64Array(model.outputCount * BATCH);
    model.evaluate(drawsOf(model.deviations.map(deviationKey), 5), COUNT, out);
    expect(new Set(out.subarray(0, COUNT)).size).toBe(COUNT);
    expect(out.subarray(0, COUNT).every(Number.isFinite)).toBe(true);
  });
});

// JCGM 101:2008 clause 9.2 (additive models) and the sensitivity functions, through the very engine
// that predicts jobs. Inputs and exact values: tests/reference/uncertainty.md 1.1 and 5.
import { describe, expect, it } from 'vitest';
import { BATCH } from '../../src/num/batch.ts';
import type { Distribution } from '../../src/num/distribution.ts';
import { momentsOf, shortestInterval, symmetricInterval } from '../num/sorted.ts';
import type { Model } from '../../src/stackup/model.ts';
import { runTrials } from '../../src/stackup/trials.ts';
import { straightOf, straightVector } from '../../src/stackup/first-order.ts';
import { worstStraightRadius } from '../../src/stackup/worst-straight.ts';
import { worstRadius } from '../../src/stackup/worst.ts';
import { atOnce } from '../../src/stackup/steps.ts';

const M = 200_000;
const normal: Distribution = { kind: 'normal', mean: 0, sd: 1 };
const rectangular = (half: number): Distribution => ({
  kind: 'rectangular',
  low: -half,
  high: half,
});
const R3 = Math.sqrt(3);

function sumOf(distributions: readonly Distribution[]): Model {
  return {
    inputs: distributions.map((distribution, id) => ({ id, distribution })),
    outputCount: 1,
    evaluate: (draws, count, out) => {
      for (let i = 0; i < count; i++) {
        let sum = 0;
        for (let k = 0; k < distributions.length; k++) sum += draws[k * BATCH + i]!;
        out[i] = sum;
      }
    },
  };
}

describe('JCGM 101 clause 9.2, additive models', () => {
  // Standard errors at M = 1e6 (mean, u, end): 0.0020, 0.0014, 0.0053 for 9.2.2; scaled by sqrt(1e6 / M) and by u / 2.
  it.each([
    ['9.2.2 four normals', [normal, normal, normal, normal], 2, 3.919928],
    ['9.2.3 four rectangles', [1, 1, 1, 1].map((k) => rectangular(k * R3)), 2, 3.879407],
    [
      '9.2.4 three rectangles and one ten times wider',
      [1, 1, 1, 10].map((k) => rectangular(k * R3)),
      10.148892,
      17.015814,
    ],
  ] as const)('%s', (_name, inputs, u, end) => {
    const results = runTrials(sumOf(inputs), 1, M)[0]!;
    const { mean, sd } = momentsOf(results);
    const scale = (Math.sqrt(1e6 / M) * u) / 2;
    expect(Math.abs(mean)).toBeLessThan(4 * 0.002 * scale);
    expect(Math.abs(sd - u)).toBeLessThan(4 * 0.0014 * scale);
    const [low, high] = symmetricInterval(results.slice().sort(), 0.95);
    expect(Math.abs(low + end)).toBeLessThan(4 * 0.0053 * scale);
    expect(Math.abs(high - end)).toBeLessThan(4 * 0.0053 * scale);
    const [shortLow, shortHigh] = shortestInterval(results.slice().sort(), 0.95);
    expect(shortHigh - shortLow).toBeLessThanOrEqual(high - low);
    expect(shortHigh - shortLow).toBeGreaterThan(0.97 * 2 * end);
  });

  it('gives the law of propagation its figures: u = 2.00 and 10.1', () => {
    for (const [inputs, u] of [
      [[normal, normal, normal, normal], 2],
      [[1, 1, 1, 10].map((k) => rectangular(k * R3)), 10.148892],
    ] as const) {
      const model = sumOf(inputs);
      const { varX } = straightVector(model, straightOf(model), 0, 0);
      expect(Math.sqrt(varX)).toBeCloseTo(u, 5);
    }
  });

  it('the same seed gives the same bits, another its own within the standard error', () => {
    const model = sumOf([normal, rectangular(1)]);
    const [one, again, other] = [1, 1, 2].map((seed) => runTrials(model, seed, 10_000)[0]!);
    expect(again).toEqual(one);
    expect(other).not.toEqual(one);
    const u = Math.sqrt(1 + 1 / 3);
    expect(Math.abs(momentsOf(one!).mean - momentsOf(other!).mean)).toBeLessThan(
      4 * u * Math.sqrt(2 / 10_000),
    );
  });

  it('a new input changes nobody else: the first is drawn as before', () => {
    const first = (inputs: readonly Distribution[]): Float64Array => {
      const model = sumOf(inputs);
      const only: Model = {
        ...model,
        evaluate: (draws, count, out) => {
          out.set(draws.subarray(0, count));
        },
      };
      return runTrials(only, 4, 3_000)[0]!;
    };
    expect(first([normal, normal, rectangular(1)])).toEqual(first([normal]));
  });
});

describe('worst case', () => {
  it('is the corner of a box: (3, 4) for limits 3 and 4', () => {
    const model: Model = {
      inputs: [3, 4].map((half, id) => ({ id, distribution: rectangular(half) })),
      outputCount: 2,
      evaluate: (draws, count, out) => {
        for (let i = 0; i < count; i++) {
          out[i] = draws[i]!;
          out[BATCH + i] = draws[BATCH + i]!;
        }
      },
    };
    const line = straightOf(model);
    expect(atOnce(worstRadius(model, line, 0, 1))).toEqual([0, 5]);
    expect(worstStraightRadius(model, line, 0, 1)[1]).toBeCloseTo(5, 4);
  });

  it('sees past the straight model where a contact switches', () => {
    const model: Model = {
      inputs: [0, 1].map((id) => ({ id, distribution: rectangular(1) })),
      outputCount: 2,
      evaluate: (draws, count, out) => {
        for (let i = 0; i < count; i++) {
          out[i] = Math.max(draws[i]!, -draws[i]!) + Math.max(draws[BATCH + i]!, 0);
          out[BATCH + i] = 0;
        }
      },
    };
    const line = straightOf(model);
    expect(atOnce(worstRadius(model, line, 0, 1))[1]).toBe(2);
    expect(worstStraightRadius(model, line, 0, 1)[1]).toBeLessThan(1);
  });
});

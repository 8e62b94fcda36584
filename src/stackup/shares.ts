import { BATCH } from '../num/batch.ts';
import { invariant } from '../num/invariant.ts';
import type { Model } from './model.ts';
import { drawBatch } from './trials.ts';

/** A result worked out from the outputs of one trial. */
export type Reading = (out: Float64Array, i: number) => number;

export interface GroupShare {
  readonly share: number;
  readonly se: number;
}

/**
 * How much of the variance of each reading each group of inputs has a hand in (total effect), by
 * drawing that group afresh and keeping all else: `mean((f - f_group)^2) / (2 V)`.
 * Source: Jansen, Computer Physics Communications 117 (1999) 35-43; Saltelli et al., ibid. 181
 * (2010) 259-270, table 2 (f). The trials are the first `batches` batches of the prediction itself.
 *
 * @param roundingVariance a variance that is not above this is rounding: it has no causes.
 * @returns `shares[reading][group]`
 */
export function totalShares(
  model: Model,
  groups: readonly (readonly number[])[],
  readings: readonly Reading[],
  seed: number,
  batches: number,
  roundingVariance = 0,
): readonly (readonly GroupShare[])[] {
  invariant(batches > 1, 'shares need two batches or more');
  const columns = model.inputs.length;
  const draws = new Float64Array(columns * BATCH);
  const fresh = new Float64Array(columns * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  const value = readings.map(() => new Float64Array(BATCH));
  const sums = readings.map(() => groups.map(() => ({ square: 0, fourth: 0 })));
  const totals = readings.map(() => ({ sum: 0, square: 0 }));

  for (let batch = 0; batch < batches; batch++) {
    drawBatch(model, seed, batch, 1, draws);
    drawBatch(model, seed, batch, 2, fresh);
    model.evaluate(draws, BATCH, out);
    readings.forEach((reading, r) => {
      for (let i = 0; i < BATCH; i++) {
        const v = reading(out, i);
        value[r]![i] = v;
        totals[r]!.sum += v;
        totals[r]!.square += v * v;
      }
    });
    groups.forEach((group, g) => {
      const saved = group.map((k) => draws.slice(k * BATCH, (k + 1) * BATCH));
      for (const k of group) draws.set(fresh.subarray(k * BATCH, (k + 1) * BATCH), k * BATCH);
      model.evaluate(draws, BATCH, out);
      group.forEach((k, index) => {
        draws.set(saved[index]!, k * BATCH);
      });
      readings.forEach((reading, r) => {
        const into = sums[r]![g]!;
        for (let i = 0; i < BATCH; i++) {
          const off = reading(out, i) - value[r]![i]!;
          into.square += off * off;
          into.fourth += off * off * off * off;
        }
      });
    });
  }

  const n = batches * BATCH;
  return readings.map((_, r) => {
    const { sum, square } = totals[r]!;
    const variance = (square - (sum * sum) / n) / (n - 1);
    return groups.map((__, g) => {
      const each = sums[r]![g]!;
      if (variance <= roundingVariance) return { share: 0, se: 0 };
      const mean = each.square / n;
      const spread = Math.sqrt(Math.max(0, each.fourth / n - mean * mean) / n);
      return { share: mean / (2 * variance), se: spread / (2 * variance) };
    });
  });
}

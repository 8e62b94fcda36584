import { BATCH } from '../num/batch.ts';
import { invariant } from '../num/invariant.ts';
import { fillFigure, type Figure } from './figure.ts';
import type { Model } from './model.ts';
import { atOnce, type Steps } from './steps.ts';
import { drawBatch } from './trials.ts';

/** What a group of inputs has to do with the variance of a figure, each with its standard error. */
export interface GroupShare {
  /** Total effect: all that the group has a hand in, alone or with others. */
  readonly share: number;
  readonly se: number;
  /** First-order effect: what it does by itself. */
  readonly first: number;
  readonly firstSe: number;
}

export interface FigureShares {
  readonly groups: readonly GroupShare[];
  /** Sum of the total effects of the first `summed` groups: above 1 where some act together. */
  readonly sum: number;
  readonly sumSe: number;
}

/**
 * Variance shares of each figure by each group of inputs, by drawing that group afresh and keeping all else.
 * Total: `mean((f_A - f_AB)^2) / (2 V)`; first order: `mean(f_B (f_AB - f_A)) / V`, f less its mean.
 * Source: Jansen, Computer Physics Communications 117 (1999) 35-43; Saltelli et al., ibid. 181 (2010)
 * 259-270, table 2 (f) and (b). The trials are the first `batches` batches of the prediction itself.
 *
 * @param roundingVariance a variance that is not above this is rounding: it has no causes.
 */
export function varianceShares(...asked: Parameters<typeof sharesByStep>): readonly FigureShares[] {
  return atOnce(sharesByStep(...asked));
}

/** The same in steps of one evaluation of a batch. */
export function* sharesByStep(
  model: Model,
  groups: readonly (readonly number[])[],
  summed: number,
  figures: readonly Figure[],
  seed: number,
  batches: number,
  roundingVariance = 0,
): Steps<readonly FigureShares[]> {
  invariant(batches > 1, 'shares need two batches or more');
  const columns = model.inputs.length;
  const [draws, fresh] = [new Float64Array(columns * BATCH), new Float64Array(columns * BATCH)];
  const mixed = new Float64Array(columns * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  const column = (): Float64Array => new Float64Array(BATCH);
  const [atA, atB, swing] = [figures.map(column), figures.map(column), figures.map(column)];
  const value = column();
  const sums = figures.map(() => groups.map(() => [0, 0, 0, 0]));
  const swings = figures.map(() => [0, 0]);
  const totals = figures.map(() => [0, 0]);
  // Any fixed place near the mean keeps the digits and the first-order estimate quiet.
  const middle = figures.map(() => 0);

  for (let batch = 0; batch < batches; batch++) {
    drawBatch(model, seed, batch, 1, draws);
    drawBatch(model, seed, batch, 2, fresh);
    const fill = (from: Float64Array, into: readonly Float64Array[]): void => {
      model.evaluate(from, BATCH, out);
      figures.forEach((figure, f) => {
        fillFigure(figure, out, into[f]!, BATCH);
      });
    };
    fill(draws, atA);
    fill(fresh, atB);
    figures.forEach((_, f) => {
      if (batch === 0) middle[f] = atA[f]!.reduce((sum, one) => sum + one, 0) / BATCH;
      for (const values of [atA[f]!, atB[f]!]) {
        for (let i = 0; i < BATCH; i++) {
          values[i]! -= middle[f]!;
          totals[f]![0]! += values[i]!;
          totals[f]![1]! += values[i]! * values[i]!;
        }
      }
      swing[f]!.fill(0);
    });
    mixed.set(draws);
    for (const [g, group] of groups.entries()) {
      yield { phase: 'shares', done: (batch + g / groups.length) / batches };
      for (const k of group) mixed.set(fresh.subarray(k * BATCH, (k + 1) * BATCH), k * BATCH);
      model.evaluate(mixed, BATCH, out);
      for (const k of group) mixed.set(draws.subarray(k * BATCH, (k + 1) * BATCH), k * BATCH);
      figures.forEach((figure, f) => {
        fillFigure(figure, out, value, BATCH);
        addSwings(value, middle[f]!, atA[f]!, atB[f]!, sums[f]![g]!, g < summed ? swing[f]! : null);
      });
    }
    figures.forEach((_, f) => {
      for (let i = 0; i < BATCH; i++) {
        swings[f]![0]! += swing[f]![i]!;
        swings[f]![1]! += swing[f]![i]! ** 2;
      }
    });
  }

  const n = batches * BATCH;
  return figures.map((_, f): FigureShares => {
    const [sum, square] = totals[f]! as [number, number];
    const variance = (square - (sum * sum) / (2 * n)) / (2 * n - 1);
    const isRounding = variance <= roundingVariance;
    const ratio = (total: number, squares: number, per: number): readonly [number, number] => {
      if (isRounding) return [0, 0];
      const mean = total / n;
      return [mean / per, Math.sqrt(Math.max(0, squares / n - mean * mean) / n) / per];
    };
    const [all, allSe] = ratio(swings[f]![0]!, swings[f]![1]!, 2 * variance);
    return {
      sum: all,
      sumSe: allSe,
      groups: sums[f]!.map(([swung, swungSquares, own, ownSquares]) => {
        const [share, se] = ratio(swung!, swungSquares!, 2 * variance);
        const [first, firstSe] = ratio(own!, ownSquares!, variance);
        return { share, se, first, firstSe };
      }),
    };
  });
}

/** Adds one batch of one figure and one group: squared swings, and swings times the fresh value. */
function addSwings(
  value: Float64Array,
  middle: number,
  atA: Float64Array,
  atB: Float64Array,
  into: number[],
  swing: Float64Array | null,
): void {
  let [swung, swungSquares, own, ownSquares] = [0, 0, 0, 0];
  for (let i = 0; i < BATCH; i++) {
    const off = value[i]! - middle - atA[i]!;
    const square = off * off;
    const product = off * atB[i]!;
    swung += square;
    swungSquares += square * square;
    own += product;
    ownSquares += product * product;
    if (swing !== null) swing[i]! += square;
  }
  into[0]! += swung;
  into[1]! += swungSquares;
  into[2]! += own;
  into[3]! += ownSquares;
}

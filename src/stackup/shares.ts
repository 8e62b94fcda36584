import { BATCH } from '../num/batch.ts';
import { fillDraws } from '../num/draw.ts';
import { invariant } from '../num/invariant.ts';
import { fillScrambled, SOBOL_DIMENSIONS } from '../num/sobol.ts';
import { fillWords, idOf } from '../num/stream.ts';
import { dimensionsOf } from './dimensions.ts';
import { fillFigure, type Figure } from './figure.ts';
import type { Model } from './model.ts';
import { shiftedGroups } from './share-shifts.ts';
import { atOnce, type Steps } from './steps.ts';

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

/** By so many independent scramblings at least the standard errors are told. */
const LEAST_REPLICATES = 16;

/**
 * Variance shares of each figure by each group of inputs, by drawing that group afresh and keeping all else.
 * Total: `mean((f_A - f_AB)^2) / (2 V)`; first order: `mean(f_B (f_AB - f_A)) / V`, f less its mean.
 * Source: Jansen, Computer Physics Communications 117 (1999) 35-43; Saltelli et al., ibid. 181 (2010)
 * 259-270, table 2 (f) and (b). The points are scrambled Sobol ones, an input's first and fresh draws in neighbouring
 * dimensions, the inputs that matter most in the first. Groups of constant slope are not evaluated: their results are
 * shifted (share-shifts.ts), which is checked.
 *
 * @param batchesFor so many times 1024 points, a power of 2; or told how many groups must be evaluated.
 * @param roundingVariance a variance that is not above this is rounding: it has no causes.
 */
export function varianceShares(...asked: Parameters<typeof sharesByStep>): readonly FigureShares[] {
  return atOnce(sharesByStep(...asked));
}

/** The same in steps of one evaluation of a replicate. */
export function* sharesByStep(
  model: Model,
  groups: readonly (readonly number[])[],
  summed: number,
  figures: readonly Figure[],
  seed: number,
  batchesFor: number | ((evaluatedGroups: number) => number),
  roundingVariance = 0,
): Steps<readonly FigureShares[]> {
  const shifts = shiftedGroups(model, groups, figures, seed);
  const evaluated = shifts.filter((shift) => shift === null).length;
  const batches = typeof batchesFor === 'number' ? batchesFor : batchesFor(evaluated);
  invariant(
    batches > 0 && (batches & (batches - 1)) === 0,
    'points for shares come in powers of 2',
  );
  const replicates = Math.max(LEAST_REPLICATES, batches);
  const count = (batches * BATCH) / replicates;
  const columns = model.inputs.length;
  const [draws, fresh] = [new Float64Array(columns * BATCH), new Float64Array(columns * BATCH)];
  const mixed = new Float64Array(columns * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  const shifted = new Float64Array(model.outputCount * BATCH);
  const column = (): Float64Array => new Float64Array(BATCH);
  const [atA, atB, swing] = [figures.map(column), figures.map(column), figures.map(column)];
  const value = column();
  const sums = figures.map(() => groups.map(() => newSums(replicates)));
  const swings = figures.map(() => new Float64Array(replicates));
  const totals = figures.map(() => [0, 0]);
  const fillPoints = pointFiller(model, seed, count);
  // Any fixed place near the mean keeps the digits and the first-order estimate quiet.
  const middle = figures.map(() => 0);

  for (let r = 0; r < replicates; r++) {
    fillPoints(r, draws, fresh);
    const fill = (from: Float64Array, into: readonly Float64Array[]): void => {
      model.evaluate(from, count, out);
      figures.forEach((figure, f) => {
        fillFigure(figure, out, into[f]!, count);
      });
    };
    fill(fresh, atB);
    fill(draws, atA);
    const base = out.slice();
    figures.forEach((_, f) => {
      if (r === 0) middle[f] = meanOfSome(atA[f]!, count);
      for (const values of [atA[f]!, atB[f]!]) {
        for (let i = 0; i < count; i++) {
          values[i]! -= middle[f]!;
          totals[f]![0]! += values[i]!;
          totals[f]![1]! += values[i]! * values[i]!;
        }
      }
      swing[f]!.fill(0);
    });
    mixed.set(draws);
    for (const [g, group] of groups.entries()) {
      yield { phase: 'shares', done: (r + g / groups.length) / replicates };
      const shift = shifts[g] ?? null;
      if (shift !== null) shift(base, draws, fresh, count, shifted);
      else {
        for (const k of group) mixed.set(fresh.subarray(k * BATCH, (k + 1) * BATCH), k * BATCH);
        model.evaluate(mixed, count, shifted);
        for (const k of group) mixed.set(draws.subarray(k * BATCH, (k + 1) * BATCH), k * BATCH);
      }
      figures.forEach((figure, f) => {
        fillFigure(figure, shifted, value, count);
        addSwings(
          { value, middle: middle[f]!, atA: atA[f]!, atB: atB[f]!, count },
          sums[f]![g]!,
          r,
          g < summed ? swing[f]! : null,
        );
      });
    }
    figures.forEach((_, f) => {
      for (let i = 0; i < count; i++) swings[f]![r]! += swing[f]![i]!;
    });
  }

  const n = replicates * count;
  return figures.map((_, f): FigureShares => {
    const [sum, square] = totals[f]! as [number, number];
    const variance = (square - (sum * sum) / (2 * n)) / (2 * n - 1);
    const ratio = (each: Float64Array, per: number): readonly [number, number] =>
      variance <= roundingVariance ? [0, 0] : meanAndError(each, count * per);
    const [all, allSe] = ratio(swings[f]!, 2 * variance);
    return {
      sum: all,
      sumSe: allSe,
      groups: sums[f]!.map(({ swung, own }) => {
        const [share, se] = ratio(swung, 2 * variance);
        const [first, firstSe] = ratio(own, variance);
        return { share, se, first, firstSe };
      }),
    };
  });
}

/** Sums of one group, one a replicate: squared swings, and swings times the fresh value. */
interface Sums {
  readonly swung: Float64Array;
  readonly own: Float64Array;
}

const newSums = (replicates: number): Sums => ({
  swung: new Float64Array(replicates),
  own: new Float64Array(replicates),
});

/** Fills first and fresh draws of all inputs for one replicate. */
function pointFiller(
  model: Model,
  seed: number,
  count: number,
): (replicate: number, draws: Float64Array, fresh: Float64Array) => void {
  const words = new Int32Array(BATCH);
  const freshId = idOf('drawn afresh');
  const inOrder = dimensionsOf(model).filter(
    (k) => model.inputs[k]!.distribution.kind !== 'exactly',
  );
  return (replicate, draws, fresh) => {
    model.inputs.forEach(({ distribution }, k) => {
      if (distribution.kind !== 'exactly') return;
      draws.fill(distribution.value, k * BATCH, k * BATCH + count);
      fresh.fill(distribution.value, k * BATCH, k * BATCH + count);
    });
    inOrder.forEach((k, rank) => {
      const { id, distribution } = model.inputs[k]!;
      [draws, fresh].forEach((into, which) => {
        const dimension = 2 * rank + which;
        const address = which === 0 ? id : (id ^ freshId) >>> 0;
        if (dimension < SOBOL_DIMENSIONS)
          fillScrambled(dimension, seed, address, replicate, words, 0, count);
        else fillWords(seed, address, replicate, SHARES_LANE, words, count);
        fillDraws(distribution, words, into, k * BATCH, count);
      });
    });
  };
}

/** Lane of the addressed streams for inputs beyond the Sobol table. */
const SHARES_LANE = 6;

interface Swung {
  readonly value: Float64Array;
  readonly middle: number;
  readonly atA: Float64Array;
  readonly atB: Float64Array;
  readonly count: number;
}

/** Adds one replicate of one figure and one group. */
function addSwings(
  { value, middle, atA, atB, count }: Swung,
  into: Sums,
  replicate: number,
  swing: Float64Array | null,
): void {
  let [swung, own] = [0, 0];
  for (let i = 0; i < count; i++) {
    const off = value[i]! - middle - atA[i]!;
    const square = off * off;
    swung += square;
    own += off * atB[i]!;
    if (swing !== null) swing[i]! += square;
  }
  into.swung[replicate]! += swung;
  into.own[replicate]! += own;
}

function meanOfSome(values: Float64Array, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += values[i]!;
  return sum / count;
}

/** Mean over `per` of the replicates' sums, and its standard error by their scatter. */
function meanAndError(each: Float64Array, per: number): readonly [number, number] {
  let sum = 0;
  for (const one of each) sum += one;
  const mean = sum / each.length;
  let squares = 0;
  for (const one of each) squares += (one - mean) ** 2;
  return [mean / per, Math.sqrt(squares / (each.length - 1) / each.length) / per];
}

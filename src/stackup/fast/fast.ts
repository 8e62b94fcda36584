import { BATCH } from '../../num/batch.ts';
import { chanceDigits, digitsOf } from '../digits.ts';
import type { Asked, Figure, Question } from '../figure.ts';
import type { Model } from '../model.ts';
import { constantSlopes } from './constant-slopes.ts';
import { agree, estimateOf, quantileBy, raw, sharesAt, type Estimate } from './estimate.ts';
import { placed, REPLICATES, type Points } from './points.ts';
import { smoothed, type Evaluated, type ShareBelow } from './shares-below.ts';

export interface FastFigure {
  readonly mean: Estimate;
  readonly sd: Estimate;
  /** Ends of the symmetric 95 % interval. */
  readonly low: Estimate;
  readonly high: Estimate;
  /** Whether shares of it were averaged exactly over some inputs, and that agreed with the raw ones. */
  readonly isSmoothed: boolean;
}

export interface FastAnswer {
  readonly evaluations: number;
  readonly figures: readonly FastFigure[];
  /** Chance of answering each question well. */
  readonly chances: readonly Estimate[];
  /** Fewest certain digits of all these numbers. */
  readonly digits: number;
}

/**
 * All numbers of a model from randomised Sobol points, with how sure each is by 16 scramblings, for live use:
 * some ten thousand evaluations in place of a million. Inputs of constant slope are averaged exactly, which is checked
 * against the raw points; where they disagree the raw ones count.
 *
 * @param points of the same inputs, made once (`pointsOf`); their spreads may have changed since.
 */
export function fastAnswer(model: Model, asked: Asked, points: Points, seed: number): FastAnswer {
  const evaluated = evaluate(model, points);
  const values = asked.figures.map((figure) => valuesOf(figure, evaluated));
  const sds = evaluated.results.map((column) => momentOf(column, points.count).sd.value);
  const slopes = constantSlopes(model, seed, sds);
  const figures = asked.figures.map((figure, f) =>
    figureAnswer(values[f]!, figureLimits(asked, f), points.count, (sd) =>
      smoothed(model, figure, slopes, evaluated, sd),
    ),
  );
  const chances = asked.questions.map((question) =>
    chanceAnswer(
      question,
      figures.map(({ below }) => below),
      values,
      points.count,
    ),
  );
  const told = figures.map(({ told: figure }) => figure);
  return {
    evaluations: REPLICATES * points.count,
    figures: told,
    chances,
    digits: digitsReached(told, chances),
  };
}

function evaluate(model: Model, { standard }: Points): Evaluated {
  const draws = model.inputs.map(({ distribution }, k) => placed(distribution, standard[k]!));
  const total = draws[0]?.length ?? REPLICATES;
  const results = Array.from({ length: model.outputCount }, () => new Float64Array(total));
  const batch = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  for (let from = 0; from < total; from += BATCH) {
    const size = Math.min(BATCH, total - from);
    draws.forEach((column, k) => {
      batch.set(column.subarray(from, from + size), k * BATCH);
    });
    model.evaluate(batch, size, out);
    results.forEach((column, k) => {
      column.set(out.subarray(k * BATCH, k * BATCH + size), from);
    });
  }
  return { draws, results };
}

function valuesOf(figure: Figure, { results }: Evaluated): Float64Array {
  if (figure.kind === 'column') return results[figure.at]!;
  const [x, y] = [results[figure.x]!, results[figure.x + 1]!];
  const lengths = new Float64Array(x.length);
  for (let i = 0; i < x.length; i++) lengths[i] = Math.sqrt(x[i]! * x[i]! + y[i]! * y[i]!);
  return lengths;
}

/** The limits that any question puts to a figure. */
function figureLimits({ questions }: Asked, f: number): readonly number[] {
  return questions.flatMap(({ lowest, highest, low, high }) => [
    ...(lowest === f && low !== null ? [low] : []),
    ...(highest === f && high !== null ? [high] : []),
  ]);
}

function figureAnswer(
  values: Float64Array,
  limits: readonly number[],
  count: number,
  smooth: (sd: number) => ShareBelow | null,
): { readonly told: FastFigure; readonly below: ShareBelow } {
  const { mean, sd } = momentOf(values, count);
  const sorted = values.slice().sort();
  const at = (p: number): number => sorted[Math.round(p * (sorted.length - 1))]!;
  const rough = raw(values);
  const ends = (below: ShareBelow): readonly [Estimate, Estimate] => [
    quantileBy(below, 0.025, at(0.025), at(0.035) - at(0.025), count),
    quantileBy(below, 0.975, at(0.975), at(0.975) - at(0.965), count),
  ];
  const fine = smooth(sd.value);
  if (fine !== null) {
    const [low, high] = ends(fine);
    const isTrue = [...limits, low.value, high.value].every((value) =>
      agree(sharesAt(fine, value, count), sharesAt(rough, value, count), count),
    );
    if (isTrue) return { told: { mean, sd, low, high, isSmoothed: true }, below: fine };
  }
  const [low, high] = roughEnds(rough, at, count);
  return { told: { mean, sd, low, high, isSmoothed: false }, below: rough };
}

/** Ends without smoothing: the sorted points', unsure by what a replicate's share there wants in value. */
function roughEnds(
  rough: ShareBelow,
  at: (p: number) => number,
  count: number,
): readonly [Estimate, Estimate] {
  const end = (p: number): Estimate => {
    const value = at(p);
    const density = 0.02 / (at(p + 0.01) - at(p - 0.01));
    return { value, sure: estimateOf(sharesAt(rough, value, count)).sure / density };
  };
  return at(0) === at(1)
    ? [
        { value: at(0), sure: 0 },
        { value: at(1), sure: 0 },
      ]
    : [end(0.025), end(0.975)];
}

function chanceAnswer(
  { lowest, highest, low, high }: Question,
  below: readonly ShareBelow[],
  values: readonly Float64Array[],
  count: number,
): Estimate {
  const tooLow = low === null ? null : sharesAt(below[lowest]!, low, count);
  const underHigh = high === null ? null : sharesAt(below[highest]!, high, count);
  const each = Float64Array.from({ length: REPLICATES }, (_, r) => {
    // Both faults at once cannot happen to one figure; to two they are counted.
    const both =
      low === null || high === null || lowest === highest
        ? 0
        : bothShare(values[lowest]!, low, values[highest]!, high, r, count);
    return (underHigh?.[r] ?? 1) - (tooLow?.[r] ?? 0) + both;
  });
  return estimateOf(each);
}

function bothShare(
  lows: Float64Array,
  low: number,
  highs: Float64Array,
  high: number,
  replicate: number,
  count: number,
): number {
  let both = 0;
  for (let i = replicate * count; i < (replicate + 1) * count; i++)
    if (lows[i]! < low && highs[i]! > high) both += 1;
  return both / count;
}

function momentOf(
  values: Float64Array,
  count: number,
): { readonly mean: Estimate; readonly sd: Estimate } {
  const means = new Float64Array(REPLICATES);
  for (let r = 0; r < REPLICATES; r++) {
    let sum = 0;
    for (let i = r * count; i < (r + 1) * count; i++) sum += values[i]!;
    means[r] = sum / count;
  }
  const mean = estimateOf(means);
  const sds = new Float64Array(REPLICATES);
  for (let r = 0; r < REPLICATES; r++) {
    let squares = 0;
    for (let i = r * count; i < (r + 1) * count; i++) squares += (values[i]! - mean.value) ** 2;
    sds[r] = Math.sqrt(squares / count);
  }
  return { mean, sd: estimateOf(sds) };
}

function digitsReached(figures: readonly FastFigure[], chances: readonly Estimate[]): number {
  return Math.min(
    Infinity,
    ...figures.flatMap(({ mean, sd, low, high }) =>
      [mean, sd, low, high].map(({ sure }) => digitsOf(sd.value, sure)),
    ),
    ...chances.map(({ value, sure }) => chanceDigits(value, sure, [value - sure, value + sure])),
  );
}

import { angleOf, cosineOf, sineOf } from '../../num/elementary.ts';
import { hermiteAt } from '../../num/hermite-table.ts';
import { meanOf, sdOf } from '../../num/spread-of.ts';
import { shareOfSum, varianceOfTerm, type Term } from '../../num/sum-share.ts';
import type { Figure } from '../figure.ts';
import type { Model } from '../model.ts';
import { termOf, type ConstantSlope } from './constant-slopes.ts';

/** The share of a figure at or below a value, as each point tells it: 0 or 1 of a raw one, between when smoothed. */
export type ShareBelow = (point: number, value: number) => number;

/** The points' results, a column an output, and their draws, a column an input. */
export interface Evaluated {
  readonly draws: readonly Float64Array[];
  readonly results: readonly Float64Array[];
}

/** The part that is averaged exactly must scatter by so much of the figure to be worth its cost. */
const WORTH = 0.1;

/**
 * Averages over the inputs of constant slope exactly, point by point, so that shares are smooth functions of
 * the points; null where those inputs hardly count. Of a column: its value less their sum, and the exact
 * distribution of that sum. Of a length: those among them that move it along one direction only.
 */
export function smoothed(
  model: Model,
  figure: Figure,
  slopes: readonly (readonly ConstantSlope[])[],
  { draws, results }: Evaluated,
  sd: number,
): ShareBelow | null {
  return figure.kind === 'column'
    ? column(model, slopes[figure.at]!, draws, results[figure.at]!, sd)
    : length(model, slopes, figure.x, draws, results, sd);
}

function column(
  model: Model,
  constant: readonly ConstantSlope[],
  draws: readonly Float64Array[],
  values: Float64Array,
  sd: number,
): ShareBelow | null {
  const moving = constant.filter(({ slope }) => slope !== 0);
  const terms = moving.flatMap(({ input, slope }): Term[] => {
    const term = termOf(model.inputs[input]!.distribution, slope);
    return term === null ? [] : [term];
  });
  const variance = terms.reduce((sum, term) => sum + varianceOfTerm(term), 0);
  if (Math.sqrt(variance) < WORTH * sd) return null;
  const rest = values.slice();
  for (const { input, slope } of moving) {
    const mean = meanOf(model.inputs[input]!.distribution);
    const drawn = draws[input]!;
    for (let i = 0; i < rest.length; i++) rest[i]! -= slope * (drawn[i]! - mean);
  }
  const table = shareOfSum(terms);
  return (i, value) => hermiteAt(table, value - rest[i]!);
}

function length(
  model: Model,
  slopes: readonly (readonly ConstantSlope[])[],
  x: number,
  draws: readonly Float64Array[],
  results: readonly Float64Array[],
  sd: number,
): ShareBelow | null {
  const moving = movingBoth(model, slopes[x]!, slopes[x + 1]!);
  const [best] = [0, Math.PI / 2, longSide(moving)]
    .map((turn, k) => along(moving, turn, k === 2, FAINT * sd))
    .sort((one, other) => other.variance - one.variance);
  const { c, s, inputs, variance } = best!;
  if (Math.sqrt(variance) < WORTH * sd) return null;
  const [atX, atY] = [results[x]!, results[x + 1]!];
  const rest = new Float64Array(atX.length);
  const across = new Float64Array(atX.length);
  for (let i = 0; i < atX.length; i++) {
    rest[i] = c * atX[i]! + s * atY[i]!;
    across[i] = c * atY[i]! - s * atX[i]!;
  }
  for (const { input, slope, mean } of inputs) {
    const drawn = draws[input]!;
    for (let i = 0; i < rest.length; i++) rest[i]! -= slope * (drawn[i]! - mean);
  }
  const table = shareOfSum(
    inputs.map(({ input, slope }) => termOf(model.inputs[input]!.distribution, slope)!),
  );
  return (i, value) => {
    const half = value * value - across[i]! * across[i]!;
    if (half <= 0 || value <= 0) return 0;
    const root = Math.sqrt(half);
    return hermiteAt(table, root - rest[i]!) - hermiteAt(table, -root - rest[i]!);
  };
}

/** What an input moves across the direction must be less than this part of the figure's scatter. */
const FAINT = 0.003;

interface Moving {
  readonly input: number;
  readonly a: number;
  readonly b: number;
  readonly mean: number;
  readonly variance: number;
  readonly isNormal: boolean;
}

/** Inputs whose slopes on x and y are both constant, and not both nought. */
function movingBoth(
  model: Model,
  onX: readonly ConstantSlope[],
  onY: readonly ConstantSlope[],
): readonly Moving[] {
  const onBoth = new Map(onY.map(({ input, slope }) => [input, slope]));
  return onX.flatMap(({ input, slope: a }): Moving[] => {
    const b = onBoth.get(input);
    if (b === undefined || (a === 0 && b === 0)) return [];
    const { distribution } = model.inputs[input]!;
    const [mean, variance] = [meanOf(distribution), sdOf(distribution) ** 2];
    return [{ input, a, b, mean, variance, isNormal: distribution.kind === 'normal' }];
  });
}

/** Direction in which the normal ones among the inputs scatter most; across it they scatter independently. */
function longSide(moving: readonly Moving[]): number {
  let [xx, yy, xy] = [0, 0, 0];
  for (const { a, b, variance, isNormal } of moving) {
    if (!isNormal) continue;
    xx += a * a * variance;
    yy += b * b * variance;
    xy += a * b * variance;
  }
  return 0.5 * angleOf(2 * xy, xx - yy);
}

/** Inputs that can be averaged along a direction: those that move nothing across it, and there all normal ones. */
function along(
  moving: readonly Moving[],
  turn: number,
  isLongSide: boolean,
  faint: number,
): {
  readonly c: number;
  readonly s: number;
  readonly inputs: readonly {
    readonly input: number;
    readonly slope: number;
    readonly mean: number;
  }[];
  readonly variance: number;
} {
  const [c, s] = [cosineOf(turn), sineOf(turn)];
  const usable = moving.filter(
    ({ a, b, variance, isNormal }) =>
      (isLongSide && isNormal) || Math.abs(c * b - s * a) * Math.sqrt(variance) < faint,
  );
  return {
    c,
    s,
    inputs: usable.map(({ input, a, b, mean }) => ({ input, slope: c * a + s * b, mean })),
    variance: usable.reduce((sum, { a, b, variance }) => sum + (c * a + s * b) ** 2 * variance, 0),
  };
}

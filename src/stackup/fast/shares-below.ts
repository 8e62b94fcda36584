import { hermiteAt } from '../../num/hermite-table.ts';
import { normalShare } from '../../num/normal-share.ts';
import { meanOf } from '../../num/spread-of.ts';
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
 * distribution of that sum. Of a length: the normal ones among them, along the direction in which they scatter most.
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
  const normals = normalsOf(model, slopes[x]!, slopes[x + 1]!);
  let [xx, yy, xy] = [0, 0, 0];
  for (const { a, b, own } of normals) {
    xx += a * a * own * own;
    yy += b * b * own * own;
    xy += a * b * own * own;
  }
  const turn = 0.5 * Math.atan2(2 * xy, xx - yy);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const scatter = Math.sqrt(Math.max(0, c * c * xx + 2 * c * s * xy + s * s * yy));
  if (scatter < WORTH * sd) return null;
  const [atX, atY] = [results[x]!, results[x + 1]!];
  const along = Float64Array.from(atX, (value, i) => c * value + s * atY[i]!);
  const across = Float64Array.from(atX, (value, i) => c * atY[i]! - s * value);
  for (const { input, a, b, mean } of normals) {
    const drawn = draws[input]!;
    const slope = c * a + s * b;
    for (let i = 0; i < along.length; i++) along[i]! -= slope * (drawn[i]! - mean);
  }
  const per = 1 / scatter;
  return (i, value) => {
    const half = value * value - across[i]! * across[i]!;
    if (half <= 0 || value <= 0) return 0;
    const root = Math.sqrt(half);
    return normalShare((root - along[i]!) * per) - normalShare((-root - along[i]!) * per);
  };
}

/** Normal inputs whose slopes on x and y are both constant; no effect is constant too. */
function normalsOf(
  model: Model,
  onX: readonly ConstantSlope[],
  onY: readonly ConstantSlope[],
): readonly {
  readonly input: number;
  readonly a: number;
  readonly b: number;
  readonly mean: number;
  readonly own: number;
}[] {
  const slopeOf = (list: readonly ConstantSlope[], input: number): number | null =>
    list.find((one) => one.input === input)?.slope ?? null;
  return model.inputs.flatMap(({ distribution }, input) => {
    if (distribution.kind !== 'normal') return [];
    const [a, b] = [slopeOf(onX, input), slopeOf(onY, input)];
    if (a === null || b === null) return [];
    return [{ input, a, b, mean: distribution.mean, own: distribution.sd }];
  });
}

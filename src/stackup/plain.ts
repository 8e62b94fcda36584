import { invariant } from '../num/invariant.ts';
import { momentsOf, shortestInterval, symmetricInterval } from '../num/summary.ts';
import { normalShareBelow } from '../num/textbook.ts';
import type { Judged } from '../setup/judged.ts';
import { chanceOf } from './chance.ts';
import { straightVector } from './first-order.ts';
import { CLOUD, type Predicted } from './predicted.ts';
import type { Figures, PlainPrediction } from './prediction.ts';
import type { Told } from './radial.ts';
import { sureTo, toleranceOf } from './sure-to.ts';
import { evaluateAt } from './trials.ts';
import { worstFigure, worstStraightFigure } from './worst-figure.ts';

/** Standard normal below which 97.5 % lies. */
const Z_975 = 1.959963984540054;

/** All but the causes of a need that is judged by one figure, or by a smallest and a largest one. */
export function plain(
  predicted: Predicted,
  judged: Extract<Judged, { readonly shape: 'plain' }>,
): Omit<PlainPrediction, Told> {
  const { need, at, unit, low, high } = judged;
  const values = predicted.results[at]!;
  const upper = judged.columnCount === 2 ? at + 1 : at;
  const uppers = predicted.results[upper]!;
  const good = values.reduce(
    (count, value, i) => count + (isWithin(value, uppers[i]!, low, high) ? 1 : 0),
    0,
  );
  const figures = figuresOf(predicted, at);
  return {
    name: need.name,
    kind: need.kind,
    shape: 'plain',
    unit,
    limits: { low, high },
    ...figures,
    firstOrder: straight(predicted, at, upper, low, high, figures),
    ...chanceOf(good, values.length),
    sample: Array.from(values.subarray(0, CLOUD)),
    largest: upper === at ? null : figuresOf(predicted, upper),
  };
}

export const isWithin = (
  value: number,
  upper: number,
  low: number | null,
  high: number | null,
): boolean => (low === null || value >= low) && (high === null || upper <= high);

function figuresOf({ model, line, results }: Predicted, at: number): Figures {
  const values = results[at]!;
  const { mean, sd } = momentsOf(values);
  invariant(
    Number.isFinite(mean),
    'a trial did not seat: the contacts are too close for the spreads',
  );
  const sorted = values.slice().sort();
  const nothing = new Float64Array(model.inputs.length);
  return {
    nominal: evaluateAt(model, [nothing])[0]![at]!,
    mean,
    sd,
    interval95: symmetricInterval(sorted, 0.95),
    shortest95: shortestInterval(sorted, 0.95),
    worst: worstFigure(model, line, at),
    worstLinear: worstStraightFigure(model, line, at),
    sureTo: sureTo(values),
  };
}

/** The normal that the straight model gives; a smallest and a largest figure move as one in it. */
function straight(
  { model, line }: Predicted,
  at: number,
  upper: number,
  low: number | null,
  high: number | null,
  figures: Figures,
): PlainPrediction['firstOrder'] {
  const { meanX: mean, varX, meanY, varY } = straightVector(model, line, at, upper);
  const [sd, upperSd] = [Math.sqrt(varX), Math.sqrt(varY)];
  const below = low === null ? 0 : shareBelow(low, mean, sd, 0);
  const above = high === null ? 0 : 1 - shareBelow(high, meanY, upperSd, 1);
  const [from, to] = figures.interval95;
  const tolerance = toleranceOf(figures.sd, 1);
  return {
    mean,
    sd,
    chance: Math.max(0, 1 - below - above),
    agrees:
      Math.abs(mean - Z_975 * sd - from) <= tolerance &&
      Math.abs(mean + Z_975 * sd - to) <= tolerance,
  };
}

/** Without a spread all of it lies on one side; `onIt` tells which when it lies on the limit. */
function shareBelow(limit: number, mean: number, sd: number, onIt: 0 | 1): number {
  if (sd > 0) return normalShareBelow((limit - mean) / sd);
  return mean === limit ? onIt : mean < limit ? 1 : 0;
}

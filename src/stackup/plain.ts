import { normalShareBelow } from '../num/textbook.ts';
import type { Source } from '../sources/source.ts';
import type { Judged } from '../setup/judged.ts';
import { chanceOf } from './chance.ts';
import { clauseEight } from './clause-eight.ts';
import { straightVector } from './first-order.ts';
import { CLOUD, type Lined } from './predicted.ts';
import type { Figures, FirstOrder, PlainPrediction } from './prediction.ts';
import type { Told } from './radial.ts';
import { toldOf } from './told.ts';
import { worstStraightFigure } from './worst-straight.ts';
import { cornerFigure, type Range } from './worst.ts';

/** Standard normal below which 97.5 % lies. */
const Z_975 = 1.959963984540054;

/** All but the causes of need `k`, one that is judged by one figure, or by a smallest and a largest one. */
export function plain(
  lined: Lined,
  judged: Extract<Judged, { readonly shape: 'plain' }>,
  k: number,
  sources: readonly Source[],
  searched: ReadonlyMap<number, Range> | null,
): Omit<PlainPrediction, Told> {
  const { need, at, unit, low, high } = judged;
  const { totals, task, kept } = lined;
  const { lowest, highest } = task.asked.questions[k]!;
  const upper = judged.columnCount === 2 ? at + 1 : at;
  const figures = figuresOf(lined, lowest, at, searched);
  const chance = chanceOf(totals.good[k]!, totals.trials());
  const first = straight(lined, at, upper, low, high);
  const ends = [first.mean - Z_975 * first.sd, first.mean + Z_975 * first.sd] as const;
  return {
    name: need.name,
    kind: need.kind,
    shape: 'plain',
    unit,
    limits: { low, high },
    ...figures,
    firstOrder: clauseEight(first, ends, figures, chance, lined.line, [at, upper], sources),
    ...chance,
    sample: Array.from(kept[at]!.subarray(0, CLOUD)),
    largest: upper === at ? null : figuresOf(lined, highest, upper, searched),
  };
}

function figuresOf(
  { model, line, totals, atNothing }: Lined,
  f: number,
  at: number,
  searched: ReadonlyMap<number, Range> | null,
): Figures {
  return {
    nominal: withoutRounding(atNothing[at]!),
    ...toldOf(totals.figure(f)),
    worst: searched?.get(at) ?? cornerFigure(model, line, at),
    worstLinear: worstStraightFigure(model, line, at),
  };
}

/** The normal that the straight model gives; a smallest and a largest figure move as one in it. */
function straight(
  { model, line }: Lined,
  at: number,
  upper: number,
  low: number | null,
  high: number | null,
): Pick<FirstOrder, 'mean' | 'sd' | 'chance'> {
  const { meanX: mean, varX, meanY, varY } = straightVector(model, line, at, upper);
  const [sd, upperSd] = [Math.sqrt(varX), Math.sqrt(varY)];
  const below = low === null ? 0 : shareBelow(low, mean, sd, 0);
  const above = high === null ? 0 : 1 - shareBelow(high, meanY, upperSd, 1);
  return { mean, sd, chance: Math.max(0, 1 - below - above) };
}

/** What rounding leaves of nothing, mm, is nothing. */
const withoutRounding = (figure: number): number => (Math.abs(figure) < 1e-9 ? 0 : figure);

/** Without a spread all of it lies on one side; `onIt` tells which when it lies on the limit. */
function shareBelow(limit: number, mean: number, sd: number, onIt: 0 | 1): number {
  if (sd > 0) return normalShareBelow((limit - mean) / sd);
  return mean === limit ? onIt : mean < limit ? 1 : 0;
}

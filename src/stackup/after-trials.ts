import { measuredWith } from './measured.ts';
import { batchOfParts } from './batch-of-parts.ts';
import { sharesOf, type Causes } from './need-shares.ts';
import type { Judged } from '../setup/judged.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import type { Lined } from './predicted.ts';
import type { BatchPrediction, Measured } from './prediction.ts';
import type { Phase, Steps } from './steps.ts';
import { worstFigure, worstRadius, type Range } from './worst.ts';

/** What takes time after the trials, as far as somebody waited for it. */
export interface AfterTrials {
  shares: ((need: number) => Causes) | null;
  /** By the column of the figure, or of its x. */
  worst: ReadonlyMap<number, Range> | null;
  /** By the number of the need. */
  measured: ReadonlyMap<number, Measured> | null;
  batch: BatchPrediction | null;
}

export const nothingYet = (): AfterTrials => ({
  shares: null,
  worst: null,
  measured: null,
  batch: null,
});

/** Works all of it out in small steps, each part put into `into` when it is whole. */
export function* workedOut(
  misfit: MisfitModel,
  sources: readonly Source[],
  lined: Lined,
  into: AfterTrials,
): Steps<void> {
  into.shares = yield* sharesOf(lined, sources);
  into.worst = yield* worstOf(misfit.judged, lined);
  into.measured = yield* measuredOf(misfit.judged, lined);
  into.batch = yield* batchOfParts(misfit, sources, lined);
}

/** The parts that nobody waited for. */
export function leftOutOf(
  { shares, worst, measured, batch }: AfterTrials,
  { gaugeSd }: Pick<Lined, 'gaugeSd'>,
  { partCount }: MisfitModel,
): readonly Phase[] {
  return [
    shares === null ? (['shares'] as const) : [],
    worst === null ? (['worst case'] as const) : [],
    measured === null && gaugeSd !== null ? (['gauge'] as const) : [],
    batch === null && partCount > 1 ? (['batches'] as const) : [],
  ].flat();
}

function* worstOf(
  judged: readonly Judged[],
  { model, line }: Lined,
): Steps<ReadonlyMap<number, Range>> {
  const found = new Map<number, Range>();
  const columns = judged.flatMap((one) =>
    one.shape === 'radial'
      ? [{ at: one.x, search: worstRadius(model, line, one.x, one.x + 1) }]
      : Array.from({ length: one.columnCount }, (_, k) => ({
          at: one.at + k,
          search: worstFigure(model, line, one.at + k),
        })),
  );
  for (const [done, { at, search }] of columns.entries()) {
    for (;;) {
      const step = search.next();
      if (step.done === true) {
        found.set(at, step.value);
        break;
      }
      yield { phase: 'worst case', done: done / columns.length };
    }
  }
  return found;
}

/** A turn is not read with a gauge of lengths. */
const isTurn = (judged: Judged): boolean => judged.shape === 'plain' && judged.unit !== 'mm';

function* measuredOf(
  judged: readonly Judged[],
  { gaugeSd, kept, task }: Lined,
): Steps<ReadonlyMap<number, Measured>> {
  const found = new Map<number, Measured>();
  if (gaugeSd === null || gaugeSd === 0) return found;
  for (const [k, one] of judged.entries()) {
    yield { phase: 'gauge', done: k / judged.length };
    if (!isTurn(one)) found.set(k, measuredWith(gaugeSd, one, kept, task.seed));
  }
  return found;
}

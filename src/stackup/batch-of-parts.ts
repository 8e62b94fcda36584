import { invariant } from '../num/invariant.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { chanceOf } from './chance.ts';
import { countBatches } from './count-batches.ts';
import type { Lined } from './predicted.ts';
import type { BatchPrediction } from './prediction.ts';
import type { Steps } from './steps.ts';
import type { Totals } from './totals.ts';

/** Most batches that are drawn, most parts in one, and most parts in all of them together. */
const MOST_TRIALS = 20_000;
export const MOST_PARTS = 1000;
const MOST_IN_ALL = 100_000;

/**
 * What a batch comes to: shop, power-up and set-up are drawn once for all its parts; blank, placings and
 * cuts anew for each. The first part is the one that the rest of the prediction tells of; each further
 * one has streams of its own, named by its number.
 */
export function* batchOfParts(
  misfit: MisfitModel,
  sources: readonly Source[],
  { model, task, totals, atNothing }: Lined,
): Steps<BatchPrediction> {
  const { partCount } = misfit;
  invariant(
    partCount >= 1 && partCount <= MOST_PARTS,
    `a batch has 1 to ${MOST_PARTS} parts, not ${partCount}`,
  );
  const trials = totals.trials();
  const one = chanceOf(totals.good[totals.good.length - 1]!, trials);
  const of = onePartOf(misfit, totals);
  if (partCount === 1 || misfit.needs.length === 0)
    return { ...of, trials, allGood: one.chance, allGoodSe: one.chanceSe, rest: null };
  const wanted = Math.min(trials, MOST_TRIALS, Math.ceil(MOST_IN_ALL / partCount));
  const counts = yield* countBatches(misfit, sources, model, task, atNothing, wanted);
  const share = (good: number, count: number): { chance: number; se: number } | null => {
    if (count === 0) return null;
    const { chance, chanceSe } = chanceOf(good, count);
    return { chance, se: chanceSe };
  };
  const all = chanceOf(counts.allGood, counts.batches);
  return {
    ...of,
    trials: counts.batches,
    allGood: all.chance,
    allGoodSe: all.chanceSe,
    rest: {
      firstGood: share(counts.allGood, counts.firstGood),
      firstCorrected: share(counts.restGoodCorrected, counts.batches),
    },
  };
}

/** What is known of a batch when no batches were drawn. */
export const undrawnBatch = (misfit: MisfitModel, totals: Totals): BatchPrediction => ({
  ...onePartOf(misfit, totals),
  trials: 0,
  allGood: null,
  allGoodSe: null,
  rest: null,
});

function onePartOf(
  { partCount }: MisfitModel,
  totals: Totals,
): Pick<BatchPrediction, 'partCount' | 'onePart' | 'expectedBad'> {
  const { chance } = chanceOf(totals.good[totals.good.length - 1]!, totals.trials());
  return { partCount, onePart: chance, expectedBad: partCount * (1 - chance) };
}

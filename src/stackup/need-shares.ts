import { BATCH } from '../num/batch.ts';
import type { Source } from '../sources/source.ts';
import { badSharesByStep } from './bad-shares.ts';
import { inputsOf } from './inputs.ts';
import type { Predicted } from './predicted.ts';
import type { NeedPrediction, RecurrenceKey, Share } from './prediction.ts';
import { sharesByStep, type GroupShare } from './shares.ts';
import type { Steps } from './steps.ts';

/** Batches of points that serve for shares: as many as cost less than half of what the trials did. */
const SHARE_BATCHES = { least: 2, most: 16 };
/** Scatter below this is the rounding of places of some hundred mm, not an effect of anything. */
const ROUNDING_MM = 1e-10;
/** Total effects must add up to so much more than 1, surely, to be called acting together. */
const FELT = 0.05;

const RECURRENCES: readonly { readonly recurs: Source['recurs']; readonly key: RecurrenceKey }[] = [
  { recurs: 'shop', key: 'shop' },
  { recurs: 'power-up', key: 'powerUp' },
  { recurs: 'setup', key: 'setup' },
  { recurs: 'part', key: 'part' },
  { recurs: 'placing', key: 'placing' },
  { recurs: 'feature', key: 'feature' },
];

export type Causes = Pick<NeedPrediction, 'shares' | 'recurring' | 'together'>;

/** When nobody waited for them. */
export const NO_CAUSES: Causes = { shares: [], recurring: null, together: null };

/** Shares of every need by source and by recurrence, of its variance and of its bad parts. */
export function* sharesOf(
  { model, task, totals, kept }: Predicted,
  sources: readonly Source[],
): Steps<(need: number) => Causes> {
  const inputs = inputsOf(sources);
  const columnsOf = (isMeant: (source: Source) => boolean): readonly number[] =>
    inputs.flatMap(({ source }, k) => (isMeant(source) ? [k] : []));
  const groups = [
    ...sources.map((one) => columnsOf((source) => source === one)),
    ...RECURRENCES.map(({ recurs }) => columnsOf((source) => source.recurs === recurs)),
  ];
  const { figures, questions } = task.asked;
  const told = questions.map(({ lowest }) => figures[lowest]!);
  const batchesFor = (evaluated: number): number => {
    const affordable = totals.trials() / BATCH / (2 * (evaluated + 2));
    const { least, most } = SHARE_BATCHES;
    // The power of 2 that is no greater.
    return 1 << (31 - Math.clz32(Math.max(least, Math.min(most, affordable))));
  };
  const all = yield* sharesByStep(
    model,
    groups,
    sources.length,
    told,
    task.seed,
    batchesFor,
    ROUNDING_MM ** 2,
  );
  const bad = yield* badSharesByStep(model, task, kept, groups.slice(0, sources.length));
  return (need) => {
    const { groups: found, sum, sumSe } = all[need]!;
    const shares: Share[] = sources
      .map((source, g) => ({ source: source.id, ...found[g]!, bad: bad[need]?.[g] ?? null }))
      .sort((a, b) => b.share - a.share);
    return {
      shares,
      recurring: recurringOf(found.slice(sources.length)),
      together: { sum, se: sumSe, isFelt: sum - 2 * sumSe > 1 + FELT },
    };
  };
}

function recurringOf(shares: readonly GroupShare[]): NeedPrediction['recurring'] {
  const recurring = { shop: 0, powerUp: 0, setup: 0, part: 0, placing: 0, feature: 0 };
  RECURRENCES.forEach(({ key }, k) => {
    recurring[key] = shares[k]!.share;
  });
  return recurring;
}

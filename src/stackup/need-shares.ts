import { BATCH } from '../num/batch.ts';
import type { Judged } from '../setup/judged.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import type { Model } from './model.ts';
import type { PredictOptions } from './options.ts';
import type { NeedPrediction, RecurrenceKey, Share } from './prediction.ts';
import { totalShares, type GroupShare } from './shares.ts';

/** Most of the trials that serve for shares, in batches; a share of a half is then known to about 0.015. */
const SHARE_BATCHES = 3;
/** Scatter below this is the rounding of places of some hundred mm, not an effect of anything. */
const ROUNDING_MM = 1e-10;

const RECURRENCES: readonly { readonly recurs: Source['recurs']; readonly key: RecurrenceKey }[] = [
  { recurs: 'shop', key: 'shop' },
  { recurs: 'power-up', key: 'powerUp' },
  { recurs: 'setup', key: 'setup' },
  { recurs: 'part', key: 'part' },
  { recurs: 'placing', key: 'placing' },
  { recurs: 'feature', key: 'feature' },
];

/** Shares of every need by source and by recurrence, all from one set of pick-freeze trials. */
export function sharesOf(
  model: Model,
  misfit: MisfitModel,
  sources: readonly Source[],
  { seed, trials }: PredictOptions,
): (need: number) => Pick<NeedPrediction, 'shares' | 'recurring'> {
  const order = sources.flatMap(({ deviations }) => deviations).sort((a, b) => a - b);
  const inputsOf = (some: readonly Source[]): readonly number[] =>
    some.flatMap(({ deviations }) => deviations.map((k) => order.indexOf(k)));
  const kinds = RECURRENCES.map(({ recurs }) =>
    sources.filter((source) => source.recurs === recurs),
  );
  const groups = [...sources.map((source) => inputsOf([source])), ...kinds.map(inputsOf)];
  const readings = misfit.judged.map(readingOf);
  const batches = Math.max(2, Math.min(SHARE_BATCHES, Math.floor(trials / BATCH)));
  const all = totalShares(model, groups, readings, seed, batches, ROUNDING_MM ** 2);
  return (need) => {
    const found = all[need]!;
    const shares: Share[] = sources
      .map((source, g) => ({ source: source.id, ...found[g]! }))
      .sort((a, b) => b.share - a.share);
    const byKind = found.slice(sources.length);
    return { shares, recurring: recurringOf(byKind) };
  };
}

/** What a need's shares are shares of: the length of a radial one, the (first) figure of a plain one. */
function readingOf(judged: Judged): (out: Float64Array, i: number) => number {
  if (judged.shape === 'plain') return (out, i) => out[judged.at * BATCH + i]!;
  const [x, y] = [judged.x * BATCH, (judged.x + 1) * BATCH];
  return (out, i) => Math.sqrt(out[x + i]! ** 2 + out[y + i]! ** 2);
}

function recurringOf(shares: readonly GroupShare[]): Readonly<Record<RecurrenceKey, number>> {
  const recurring = { shop: 0, powerUp: 0, setup: 0, part: 0, placing: 0, feature: 0 };
  RECURRENCES.forEach(({ key }, k) => {
    recurring[key] = shares[k]!.share;
  });
  return recurring;
}

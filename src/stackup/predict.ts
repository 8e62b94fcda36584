import { BATCH } from '../num/batch.ts';
import { invariant } from '../num/invariant.ts';
import { chanceWithinRadius, radiusMoments, radiusQuantile } from '../num/radius.ts';
import { covarianceOf, momentsOf, shortestInterval, symmetricInterval } from '../num/summary.ts';
import { deviationKey } from '../setup/deviation.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { straightOf, straightVector, type Straight } from './first-order.ts';
import type { Model } from './model.ts';
import type { NeedPrediction, Prediction, RecurrenceKey, Share } from './prediction.ts';
import { totalShares, type GroupShare } from './shares.ts';
import { sureTo, toleranceOf } from './sure-to.ts';
import { runTrials } from './trials.ts';
import { worstRadius, worstStraightRadius } from './worst.ts';
import { idOf } from '../num/stream.ts';
import { chanceInterval } from '../num/textbook.ts';

export interface PredictOptions {
  readonly seed: number;
  readonly trials: number;
}

/** Most of the trials that serve for shares, in batches; a share of a half is then known to about 0.015. */
const SHARE_BATCHES = 8;
const CLOUD = 400;
/** Scatter below this is the rounding of places of some hundred mm, not an effect of anything. */
const ROUNDING_MM = 1e-10;

/** Predicts every need of a set-up: misfits by Monte Carlo, with first order and worst case beside it. */
export function predict(
  jobName: string,
  misfit: MisfitModel,
  sources: readonly Source[],
  options: PredictOptions,
): Prediction {
  const model = modelOf(misfit, sources);
  const results = runTrials(model, options.seed, options.trials);
  const line = straightOf(model);
  const shares = sharesOf(model, misfit, sources, options);
  return {
    json: 1,
    job: jobName,
    seed: options.seed,
    trials: options.trials,
    assumed: sources.filter(({ origin }) => origin.kind === 'assumed').map(({ id }) => id),
    sources: sources.map(({ id, words, text, recurs, origin }) => ({
      name: id,
      words,
      text,
      recurs,
      because: origin.kind === 'assumed' ? origin.because : null,
    })),
    needs: misfit.needs.map((need, k) => {
      const moments = momentsKnown(sources);
      const [x, y] = [results[2 * k]!, results[2 * k + 1]!];
      const shared = shares(k);
      return {
        name: need.name,
        kind: need.kind,
        ...radial(model, line, k, x, y, need.withinMm),
        ...(moments === 'known' ? shared : { ...shared, shares: [] }),
        moments,
      };
    }),
  };
}

/** The misfit model with a distribution and a stream for each of its deviations. */
export function modelOf(misfit: MisfitModel, sources: readonly Source[]): Model {
  const sourceAt = new Map(sources.flatMap((source) => source.deviations.map((k) => [k, source])));
  const used = [...sourceAt.keys()].sort((a, b) => a - b);
  const ids = used.map((k) => idOf(deviationKey(misfit.deviations[k]!)));
  invariant(new Set(ids).size === ids.length, 'two deviations share a stream');
  // Deviations without a source stay 0: the model sees them, the engine does not draw them.
  const full = new Float64Array(misfit.deviations.length * BATCH);
  return {
    inputs: used.map((k, index) => ({
      id: ids[index]!,
      distribution: sourceAt.get(k)!.distribution,
    })),
    outputCount: 2 * misfit.needs.length,
    evaluate: (draws, count, out) => {
      used.forEach((k, index) => {
        full.set(draws.subarray(index * BATCH, index * BATCH + count), k * BATCH);
      });
      misfit.evaluate(full, count, out);
    },
  };
}

/** What the fewest readings among the sources leave to be told. */
function momentsKnown(sources: readonly Source[]): NeedPrediction['moments'] {
  const dofs = sources.flatMap(({ distribution }) =>
    distribution.kind === 'scaled-t' ? [distribution.dof] : [],
  );
  const fewest = Math.min(Infinity, ...dofs);
  return fewest > 2 ? 'known' : fewest > 1 ? 'no sd' : 'no mean';
}

type Radial = Omit<NeedPrediction, 'name' | 'kind' | 'shares' | 'recurring' | 'moments'>;

function radial(
  model: Model,
  line: Straight,
  need: number,
  x: Float64Array,
  y: Float64Array,
  withinMm: number,
): Radial {
  const radius = Float64Array.from(x, (value, i) => Math.sqrt(value * value + y[i]! * y[i]!));
  const { mean, sd } = momentsOf(radius);
  invariant(
    Number.isFinite(mean),
    'a trial did not seat: the contacts are too close for the spreads',
  );
  const sorted = radius.slice().sort();
  const interval95 = symmetricInterval(sorted, 0.95);
  const good = radius.reduce((count, value) => count + (value <= withinMm ? 1 : 0), 0);
  const chance = good / radius.length;
  const straight = straightVector(model, line, 2 * need, 2 * need + 1);
  const [momentsX, momentsY] = [momentsOf(x), momentsOf(y)];
  return {
    unit: 'mm',
    nominal: 0,
    limits: { low: null, high: withinMm },
    mean,
    sd,
    interval95,
    shortest95: shortestInterval(sorted, 0.95),
    worst: worstRadius(model, line, 2 * need, 2 * need + 1),
    worstLinear: worstStraightRadius(model, line, 2 * need, 2 * need + 1),
    firstOrder: {
      ...radiusMoments(straight),
      chance: chanceWithinRadius(straight, withinMm),
      agrees:
        Math.abs(radiusQuantile(straight, 0.025) - interval95[0]) <= toleranceOf(sd, 1) &&
        Math.abs(radiusQuantile(straight, 0.975) - interval95[1]) <= toleranceOf(sd, 1),
    },
    chance,
    chance95: chanceInterval(good, radius.length, 0.95),
    chanceSe: Math.sqrt(Math.max(chance * (1 - chance), 1 / radius.length) / radius.length),
    sureTo: sureTo(radius),
    x: momentsX,
    y: momentsY,
    covariance: covarianceOf(x, y),
    cloud: Array.from({ length: Math.min(CLOUD, x.length) }, (_, i) => [x[i]!, y[i]!] as const),
  };
}

const RECURRENCES: readonly { readonly recurs: Source['recurs']; readonly key: RecurrenceKey }[] = [
  { recurs: 'shop', key: 'shop' },
  { recurs: 'power-up', key: 'powerUp' },
  { recurs: 'setup', key: 'setup' },
  { recurs: 'part', key: 'part' },
  { recurs: 'placing', key: 'placing' },
  { recurs: 'feature', key: 'feature' },
];

/** Shares of every need by source and by recurrence, all from one set of pick-freeze trials. */
function sharesOf(
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
  const readings = misfit.needs.map(
    (_, k) => (out: Float64Array, i: number) =>
      Math.sqrt(out[2 * k * BATCH + i]! ** 2 + out[(2 * k + 1) * BATCH + i]! ** 2),
  );
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

function recurringOf(shares: readonly GroupShare[]): Readonly<Record<RecurrenceKey, number>> {
  const recurring = { shop: 0, powerUp: 0, setup: 0, part: 0, placing: 0, feature: 0 };
  RECURRENCES.forEach(({ key }, k) => {
    recurring[key] = shares[k]!.share;
  });
  return recurring;
}

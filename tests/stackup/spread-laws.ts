import { expect } from 'vitest';
import type { Distribution } from '../../src/num/distribution.ts';
import { symmetricInterval } from '../num/sorted.ts';
import type { Job, Spread } from '../../src/job/job.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { straightOf } from '../../src/stackup/first-order.ts';
import { modelOf } from '../../src/stackup/model-of.ts';
import { predict } from '../../src/stackup/predict.ts';
import type { NeedPrediction } from '../../src/stackup/prediction.ts';
import { runTrials } from '../../src/stackup/trials.ts';
import { worstFigure } from '../../src/stackup/worst.ts';
import { atOnce } from '../../src/stackup/steps.ts';
import { withEveryNeed } from '../setup/every-need.ts';
import { plainJob, spread } from '../setup/plain-job.ts';

const WIDER = 1.5;
const SEED = 5;

/** Wider about its own centre, or from nothing outwards; null for what has no width. */
function widened(distribution: Distribution): Distribution | null {
  switch (distribution.kind) {
    case 'exactly':
      return null;
    case 'half-normal':
      return { ...distribution, sigma: WIDER * distribution.sigma };
    case 'normal':
      return { ...distribution, sd: WIDER * distribution.sd };
    case 'scaled-t':
      return { ...distribution, scale: WIDER * distribution.scale };
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either': {
      const { low, high } = distribution;
      const middle = low === 0 ? 0 : (low + high) / 2;
      return {
        ...distribution,
        low: middle + WIDER * (low - middle),
        high: middle + WIDER * (high - middle),
      };
    }
  }
}

/** Luck that chooses between two cases is not a size, and no limit goes further than both. */
const CASES = ['rocking', 'side of the cup'];

/**
 * Widens each of some sources of a job with one need, on the same luck. The worst case reaches as far as before
 * on both sides, but for the share of its width by which its search may stay short. The old 95 % interval holds no more of
 * the trials than it did: where a source hardly matters, trials change sides of its ends like tosses of a coin,
 * so four standard errors are left to them.
 */
export function expectWideningWidens(
  job: Job,
  trials: number,
  ids: (id: string) => boolean,
  // Between the limits the search may end on a lesser top: 4e-6 of the width was met.
  shortShare = 1e-5,
): void {
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  const model = modelOf(misfit, sources);
  const before = runTrials(model, SEED, trials)[0]!;
  const [from, to] = symmetricInterval(before.slice().sort(), 0.95);
  const isOut = (value: number): number => (value < from || value > to ? 1 : 0);
  const worst = atOnce(worstFigure(model, straightOf(model), 0));
  let tried = 0;
  for (const source of sources) {
    const distribution = widened(source.distribution);
    if (distribution === null || CASES.includes(source.id) || !ids(source.id)) continue;
    const wider = modelOf(
      misfit,
      sources.map((one) => (one === source ? { ...one, distribution } : one)),
    );
    const after = runTrials(wider, SEED, trials)[0]!;
    let [changed, more] = [0, 0];
    after.forEach((value, i) => {
      const out = isOut(value) - isOut(before[i]!);
      changed += Math.abs(out);
      more += out;
    });
    expect(more, source.id).toBeGreaterThanOrEqual(-4 * Math.sqrt(changed));
    const wide = atOnce(worstFigure(wider, straightOf(wider), 0));
    const short = shortShare * (worst[1] - worst[0]);
    expect(wide[0], source.id).toBeLessThanOrEqual(worst[0] + short);
    expect(wide[1], source.id).toBeGreaterThanOrEqual(worst[1] - short);
    tried++;
  }
  expect(tried).toBeGreaterThan(0);
}

/** The plain job with a few things off, `thickness` as given, and one need. */
export function quietJob(need: number, thickness: Distribution): Job {
  const job = withEveryNeed(plainJob());
  const off = (half: number): Spread => spread({ kind: 'rectangular', low: -half, high: half });
  return {
    ...job,
    blank: {
      ...job.blank,
      thickSpread: spread(thickness),
      widthSpread: off(0.4),
      squareSpread: off(0.0015),
    },
    needs: [job.needs[need]!],
    shop: {
      ...job.shop,
      machine: { ...job.shop.machine, lean: off(0.0015), scaleX: off(3e-4) },
      bed: { ...job.shop.bed, leanX: off(1e-3), leanY: off(1e-3) },
      cutters: job.shop.cutters.map((cutter) => ({ ...cutter, radiusError: off(0.02) })),
    },
  };
}

/** What a prediction says of a quiet job's need when its thickness is spread like that. */
export function predicted(need: number, thickness: Distribution): NeedPrediction {
  const job = quietJob(need, thickness);
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  return predict(job.name, misfit, sources, { seed: 1, trials: 2048 }).needs[0]!;
}

/** Nothing comes of a spread that has no width: no share, and the same trials as without it. */
export function expectNoShareOfNothing(need: number): void {
  const nothing = predicted(need, { kind: 'exactly', value: 0 });
  expect(nothing.shares.map(({ source }) => source)).not.toContain('blank thickness');
  const narrow = predicted(need, { kind: 'rectangular', low: 0, high: 0 });
  const bias = predicted(need, { kind: 'exactly', value: 0.1 });
  for (const one of [narrow, bias])
    for (const { source, share, se } of one.shares)
      if (source === 'blank thickness') expect([share, se]).toEqual([0, 0]);
  expect(narrow.mean).toBe(nothing.mean);
  expect(narrow.interval95).toEqual(nothing.interval95);
  const real = nothing.shares.filter(({ share }) => share > 0);
  expect(real.length).toBeGreaterThan(0);
  for (const { source, share } of real)
    // Told from differences of the model at two places: alike but for their rounding.
    expect(
      Math.abs(narrow.shares.find((one) => one.source === source)!.share - share),
    ).toBeLessThan(1e-6);
}

import type { Distribution } from '../../src/num/distribution.ts';
import type { StopsJob, Recurrence, Spread, Zero } from '../../src/job/job.ts';
import { withEveryNeed } from './every-need.ts';
import { shopJob } from './shop-job.ts';
import { spread } from './plain-job.ts';

const of = (distribution: Distribution, recurs: Recurrence): Spread => ({
  ...spread(distribution),
  recurs,
});
const pm = (a: number): Distribution => ({ kind: 'rectangular', low: -a, high: a });
const upTo = (high: number): Distribution => ({ kind: 'rectangular', low: 0, high });

/** The job in an ordinary shop with a need of every kind, and a spread of everything they draw on. */
export function wholeShopJob(changes: (job: StopsJob) => Partial<StopsJob> = () => ({})): StopsJob {
  const job = withEveryNeed(shopJob());
  const heightTouch = (zero: Zero): Zero => ({
    ...zero,
    z: {
      ...zero.z,
      tool: { name: 'paper', spread: of({ kind: 'normal', mean: 0, sd: 0.02 }, 'setup') },
    },
  });
  const cutters = job.shop.cutters.map((cutter) => ({
    ...cutter,
    radiusError: of(pm(0.02), 'shop'),
    pushOff: of(upTo(0.05), 'feature'),
    vee:
      cutter.vee === null
        ? null
        : { ...cutter.vee, tipFlatMm: of({ kind: 'exactly', value: 0.1 }, 'shop') },
  }));
  const whole: StopsJob = {
    ...job,
    blank: {
      ...job.blank,
      thicknessTaperX: of(pm(5e-4), 'part'),
      thicknessTaperY: of(pm(5e-4), 'part'),
      cup: { hump: of(upTo(0.2), 'part'), along: 'y', up: null, pressedFlat: false },
      swarf: of({ kind: 'half-normal', sigma: 0.02 }, 'placing'),
    },
    features: job.features.map((feature) => ({
      ...feature,
      cutter: cutters.find(({ name }) => name === feature.cutter.name)!,
    })),
    zero: { frontUp: heightTouch(job.zero.frontUp), backUp: heightTouch(job.zero.backUp) },
    shop: {
      ...job.shop,
      cutters,
      bed: {
        ...job.shop.bed,
        leanX: of(pm(1e-3), 'shop'),
        leanY: of(pm(1e-3), 'shop'),
        unevenness: of(pm(0.05), 'shop'),
      },
    },
  };
  return { ...whole, ...changes(whole) };
}

import type { Job, Need } from '../../src/job/job.ts';
import type { NeedPrediction, Prediction } from '../../src/stackup/prediction.ts';

/** Numbers made up for the page: a plausible cloud without chance in it. */
export function predictionFor(
  job: Pick<Job, 'name' | 'needs'>,
  chances: readonly number[],
  sizeMm = 0.06,
): Prediction {
  return {
    json: 1,
    job: job.name,
    seed: 7,
    trials: 100000,
    ended: 'trials',
    digitsAsked: 2,
    leftOut: [],
    assumed: ['lean of the Y axis', 'lost motion', 'bevel of the edges', 'cup of the blank'],
    sources: [],
    batch: {
      partCount: 1,
      trials: 100000,
      onePart: Math.min(...chances),
      allGood: Math.min(...chances),
      allGoodSe: 0.001,
      expectedBad: 1 - Math.min(...chances),
      rest: null,
    },
    needs: job.needs.map((need, i) => needPrediction(need, chances[i] ?? 0.5, sizeMm)),
  };
}

function needPrediction(need: Need, chance: number, sizeMm: number): NeedPrediction {
  if (need.kind !== 'concentric' && need.kind !== 'misalignment')
    throw new Error('made up for radial needs only');
  return {
    shape: 'radial',
    name: need.name,
    kind: need.kind,
    unit: 'mm',
    nominal: 0,
    limits: { low: null, high: need.withinMm },
    mean: 1.31 * sizeMm,
    sd: 0.7 * sizeMm,
    interval95: [0.24 * sizeMm, 2.9 * sizeMm],
    shortest95: [0.1 * sizeMm, 2.6 * sizeMm],
    worst: [0, 6 * sizeMm],
    worstLinear: [0, 7 * sizeMm],
    firstOrder: {
      mean: 1.3 * sizeMm,
      sd: 0.7 * sizeMm,
      chance,
      off: [0, 0],
      tolerance: 0.01,
      agrees: true,
      timesBad: null,
      switching: [],
    },
    chance,
    chanceSe: 0.0001,
    chanceSure: 0.00026,
    moments: 'known',
    measured: null,
    chance95: [chance - 0.002, Math.min(1, chance + 0.002)],
    chanceDigits: 1,
    sure: { mean: 0.001, sd: 0.001, low: 0.001, high: 0.001 },
    digits: { mean: 1, sd: 1, low: 1, high: 1 },
    shares: [
      {
        source: 'length of the blank',
        share: 0.617,
        se: 0.004,
        first: 0.617,
        firstSe: 0.01,
        bad: null,
      },
      {
        source: 'bevel of the edges',
        share: 0.224,
        se: 0.004,
        first: 0.224,
        firstSe: 0.01,
        bad: null,
      },
      { source: 'lost motion', share: 0.093, se: 0.004, first: 0.093, firstSe: 0.01, bad: null },
      {
        source: 'lean of the Y axis',
        share: 0.05,
        se: 0.004,
        first: 0.05,
        firstSe: 0.01,
        bad: null,
      },
    ],
    together: { sum: 1, se: 0.01, isFelt: false },
    recurring: { shop: 0.09, powerUp: 0, setup: 0.05, part: 0.75, placing: 0.01, feature: 0.1 },
    x: { mean: 0.2 * sizeMm, sd: 1.2 * sizeMm },
    y: { mean: -0.1 * sizeMm, sd: 0.8 * sizeMm },
    covariance: 0.3 * sizeMm ** 2,
    region95: {
      ellipse: { kp: 2.45, alongMm: 3 * sizeMm, acrossMm: 1.9 * sizeMm, turnRad: 0.2 },
      rectangle: { kq: 2.24, halfXMm: 2.7 * sizeMm, halfYMm: 1.8 * sizeMm },
    },
    cloud: Array.from({ length: 300 }, (_, k) => sunflower(k, sizeMm)),
  };
}

/** Places of equal chance under a plane normal spread, by the golden angle. */
function sunflower(k: number, sizeMm: number): readonly [number, number] {
  const radius = Math.sqrt(-2 * Math.log(1 - (k + 0.5) / 300)) * sizeMm;
  const angle = k * 2.399963;
  const [u, v] = [radius * Math.cos(angle), radius * Math.sin(angle)];
  return [0.2 * sizeMm + 1.2 * u, -0.1 * sizeMm + 0.25 * u + 0.76 * v];
}

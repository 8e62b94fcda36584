import {
  normalShareBelow,
  chanceInterval,
  chiSquareQuantile,
  chiSquareShareBelow,
} from '../num/textbook.ts';
import { leastSquares } from '../num/least-squares.ts';
import { studentShareBelow } from '../num/textbook.ts';
import { factor95, type Estimate } from './estimate.ts';

/** What was predicted of one need. */
export interface Expected {
  readonly mean: number;
  readonly sd: number;
  readonly low: number | null;
  readonly high: number | null;
  /** Chance of being within the limits. */
  readonly chance: number;
  /** Part of the variance that is the same for all parts of a batch, 0..1. */
  readonly staysShare: number;
}

/** One finished part's figure; `order` counts the parts as they were made. */
export interface Came {
  readonly order: number;
  readonly value: number;
}

/** What finished parts came to, beside what was predicted. */
export interface Outcome {
  readonly count: number;
  readonly goodCount: number;
  /** Interval that holds the true share of good parts 95 times in 100, by these parts alone. */
  readonly goodShare95: readonly [number, number];
  /** Of the parts' own mean: Student's t, so that two parts give no more than two can. */
  readonly mean: Estimate;
  /** Scatter of the parts about their mean and the interval that holds the true one; null for a single part. */
  readonly sd: { readonly value: number; readonly low: number; readonly high: number } | null;
  readonly verdict: Verdict;
  /** Figures against the order of the parts; null with fewer than four. */
  readonly drift: Drift | null;
}

/** How sure, 0..1, that it is not luck; of `as predicted` how sure one could be of anything else. */
export interface Verdict {
  readonly kind: 'as predicted' | 'worse' | 'better';
  readonly by: 'middle' | 'scatter';
  readonly sure: number;
}

export interface Drift {
  readonly perPart: Estimate;
  readonly sure: number;
}

/** A verdict other than `as predicted` is luck this often, at most. */
const LUCK = 0.05;

/**
 * Finished parts against a prediction. The middle is judged by what all parts of a batch share and
 * what they do not, the scatter by chi-square; each gets half of the luck. The figures are taken as
 * normal, so of radial needs the verdict is an estimate.
 */
export function outcomeOf(expected: Expected, parts: readonly Came[], gaugeSd: number): Outcome {
  const values = parts.map(({ value }) => value);
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const sd = n < 2 ? NaN : Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (n - 1));
  const { low, high } = expected;
  const goodCount = values.filter(
    (value) => (low === null || value >= low) && (high === null || value <= high),
  ).length;
  return {
    count: n,
    goodCount,
    goodShare95: chanceInterval(goodCount, n, 0.95),
    mean:
      n < 2
        ? { value: mean, sd: gaugeSd, dof: 0 }
        : { value: mean, sd: sd / Math.sqrt(n), dof: n - 1 },
    sd: n < 2 ? null : scatter95(sd, n - 1),
    verdict: verdictOf(expected, mean, sd, n, gaugeSd),
    drift: driftOf(parts),
  };
}

/** Half of the interval that holds the parts' true mean 95 times in 100; infinite for one part. */
export const meanHalf95 = ({ mean }: Outcome): number => factor95(mean.dof) * mean.sd;

function scatter95(sd: number, dof: number) {
  const end = (p: number): number => sd * Math.sqrt(dof / chiSquareQuantile(p, dof));
  return { value: sd, low: end(0.975), high: end(0.025) };
}

function verdictOf(
  expected: Expected,
  mean: number,
  sd: number,
  n: number,
  gaugeSd: number,
): Verdict {
  const stays = expected.sd ** 2 * expected.staysShare;
  const varies = expected.sd ** 2 * (1 - expected.staysShare) + gaugeSd ** 2;
  const z = (mean - expected.mean) / Math.sqrt(stays + varies / n);
  const luckOfMiddle = 2 * normalShareBelow(-Math.abs(z));
  const isWorse = badness(expected, mean) > badness(expected, expected.mean);
  const middle = { luck: luckOfMiddle, kind: isWorse ? 'worse' : 'better' } as const;
  if (n < 2 || varies === 0) return judged('middle', middle, 1);
  const below = chiSquareShareBelow(((n - 1) * sd * sd) / varies, n - 1);
  const scatter = {
    luck: 2 * Math.min(below, 1 - below),
    kind: below > 0.5 ? 'worse' : 'better',
  } as const;
  // Two looks at the same parts: each may be luck half as often.
  return scatter.luck < middle.luck ? judged('scatter', scatter, 2) : judged('middle', middle, 2);
}

function judged(
  by: Verdict['by'],
  found: { readonly luck: number; readonly kind: 'worse' | 'better' },
  looks: number,
): Verdict {
  const luck = Math.min(1, looks * found.luck);
  return { kind: luck < LUCK ? found.kind : 'as predicted', by, sure: 1 - luck };
}

/** How near a figure is to its limits, the larger the nearer. */
function badness({ low, high }: Expected, value: number): number {
  if (low !== null && high !== null) return Math.abs(value - (low + high) / 2);
  return high !== null ? value : -value;
}

function driftOf(parts: readonly Came[]): Drift | null {
  if (parts.length < 4) return null;
  const middle = parts.reduce((sum, { order }) => sum + order, 0) / parts.length;
  const fit = leastSquares(
    parts.map(({ order }) => [1, order - middle]),
    parts.map(({ value }) => value),
  );
  if (fit === null) return null;
  const perPart = {
    value: fit.coefficients[1]!,
    sd: fit.residualSd * Math.sqrt(fit.unscaled[1]![1]!),
    dof: fit.dof,
  };
  if (perPart.sd === 0) return { perPart, sure: perPart.value === 0 ? 0 : 1 };
  const t = Math.abs(perPart.value) / perPart.sd;
  return { perPart, sure: 1 - 2 * studentShareBelow(-t, fit.dof) };
}

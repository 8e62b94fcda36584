import { cubePoint, described, SHARES } from './numbers.ts';
import type { Loose } from './cases.ts';
import { missAt, sampleOf, type Motion } from './true-sets.ts';
import { lainBy, type Lain } from './trials.ts';

/** A far corner of the blank, where a turn shows. */
const FAR = [270, 170] as const;

const readings: Readonly<Record<string, (motion: Motion, lineMm: number) => number>> = {
  sine: ({ sine }) => sine,
  'far x': (motion, lineMm) => -missAt(motion, [2 * lineMm - FAR[0], FAR[1]])[0],
  'far y': (motion, lineMm) => missAt(motion, [2 * lineMm - FAR[0], FAR[1]])[1],
};
const lainReadings: Readonly<Record<string, (lain: Lain) => number>> = {
  sine: ({ sine }) => sine,
  'far x': ({ at }) => at(...FAR)[0],
  'far y': ({ at }) => at(...FAR)[1],
};

export interface Compared {
  readonly kept: number;
  /** What is further apart than four standard errors and `tolerance` of the range, told. */
  readonly apart: readonly string[];
  /** The most that means, deviations or quantiles are apart, as a share of the range. */
  readonly mostShare: number;
}

/**
 * Means, standard deviations and quantiles of the turn and of how far a far place lands off, by the production model
 * and by rejection out of a box. Both use evenly spread points, so that standard errors of random ones are more than enough.
 */
export function compared(
  { job, off, beyond, box, lineMm }: Loose,
  trials: number,
  tries: number,
  tolerance: number,
): Compared {
  const motions = sampleOf(beyond, box, tries);
  const lain = lainBy(job, off, trials, cubePoint);
  const apart: string[] = [];
  let mostShare = 0;
  for (const name of Object.keys(readings)) {
    const values = motions.map((motion) => readings[name]!(motion, lineMm));
    const exact = described(values);
    const ours = described(lain.map(lainReadings[name]!));
    const range = exact.high - exact.low;
    const perCount = Math.sqrt(1 / motions.length + 1 / trials);
    const check = (what: string, difference: number, error: number): void => {
      mostShare = Math.max(mostShare, Math.abs(difference) / range);
      if (!(Math.abs(difference) <= 4 * error + tolerance * range))
        apart.push(`${name}, ${what}: ${((100 * difference) / range).toFixed(3)} % of the range`);
    };
    check('mean', ours.mean - exact.mean, exact.sd * perCount);
    // Of flat distributions; a normal one's would be 1.6 times that.
    check('sd', ours.sd - exact.sd, 0.45 * exact.sd * perCount);
    SHARES.forEach((share, k) => {
      const density = densityAt(values, exact.quantiles[k]!, range);
      const error = (Math.sqrt(share * (1 - share)) * perCount) / density;
      check(`${100 * share} %`, ours.quantiles[k]! - exact.quantiles[k]!, error);
    });
  }
  return { kept: motions.length, apart, mostShare };
}

/** Share of the values per unit near one of them. */
function densityAt(values: readonly number[], at: number, range: number): number {
  const half = 0.03 * range;
  const near = values.filter((value) => Math.abs(value - at) < half).length;
  return Math.max(near, 1) / values.length / (2 * half);
}

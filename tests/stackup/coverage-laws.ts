import fc from 'fast-check';
import type { Distribution } from '../../src/num/distribution.ts';
import { deviationKey } from '../../src/setup/deviation.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import type { Source } from '../../src/sources/source.ts';
import { toleranceOf } from '../../src/stackup/digits.ts';
import { askedOf } from '../../src/stackup/figure.ts';
import { modelOf } from '../../src/stackup/model-of.ts';
import { fastAnswer } from '../../src/stackup/fast/fast.ts';
import { pointsOf } from '../../src/stackup/fast/points.ts';
import { predict } from '../../src/stackup/predict.ts';
import { allOff } from '../setup/second-model/all-off.ts';
import { setUp, type SetUp } from '../setup/second-model/set-ups.ts';
import { tried } from './a-model.ts';

/** What the engine says of random jobs, held against many fresh trials of each. */
export interface Coverage {
  readonly jobs: number;
  /** Share of fresh parts in the stated 95 % interval, the mean over all jobs, and its standard error. */
  readonly held: number;
  readonly heldSe: number;
  readonly certified: number;
  readonly wrong: number;
  /** The same of the fast path. */
  readonly fastCertified: number;
  readonly fastWrong: number;
}

const KINDS = ['normal', 'rectangular', 'triangular', 'half-normal'] as const;

/** Everything that a set-up asks for, each spread in its own way. */
function sourcesFor(one: SetUp): {
  readonly misfit: ReturnType<typeof misfitModel>;
  readonly sources: readonly Source[];
} {
  const need = { kind: 'misalignment', name: 'here', at: one.at, withinMm: 0.25 } as const;
  const misfit = misfitModel({ ...one.job, needs: [need] });
  const off = allOff(one);
  const sources = misfit.deviations.flatMap((deviation, k): Source[] => {
    const id = deviationKey(deviation);
    const size = Math.abs(off[id] ?? 0);
    if (size === 0) return [];
    const kind = KINDS[(k + one.seed) % KINDS.length]!;
    const distribution: Distribution =
      deviation.kind === 'rock'
        ? { kind: 'rectangular', low: 0, high: 1 }
        : kind === 'normal'
          ? { kind, mean: 0, sd: size / 2 }
          : kind === 'half-normal'
            ? { kind, sigma: size / 2 }
            : { kind, low: -size, high: size };
    return [
      {
        id,
        words: id,
        text: '',
        distribution,
        recurs: 'part',
        origin: { kind: 'assumed', because: 'made up for a test' },
        deviations: [k],
      },
    ];
  });
  return { misfit, sources };
}

export function coverageOf(jobs: number, trials: number, freshTrials: number): Coverage {
  const shares: number[] = [];
  const count = { certified: 0, wrong: 0, fastCertified: 0, fastWrong: 0 };
  const realistic = setUp.filter(({ size }) => size === 'realistic');
  fc.sample(realistic, { seed: 29, numRuns: jobs }).forEach((one, index) => {
    const { misfit, sources } = sourcesFor(one);
    const [need] = predict(one.job.name, misfit, sources, { seed: index, trials, digits: 4 }).needs;
    const model = modelOf(misfit, sources);
    const asked = askedOf(misfit.judged);
    const fresh = tried(model, freshTrials, asked, 1_000_000 + index);
    const truth = fresh.figure(0);
    const chance = fresh.good[0]! / fresh.trials();
    const inside = tried(
      model,
      4096,
      {
        ...asked,
        questions: [{ lowest: 0, highest: 0, low: need!.interval95[0], high: need!.interval95[1] }],
      },
      2_000_000 + index,
    );
    shares.push(inside.good[0]! / inside.trials());
    // A number is right when the truth is within its last digit, give or take what the fresh trials leave unsure.
    const check = (
      value: number,
      exact: number,
      size: number,
      digits: number,
      slack: number,
      fast: boolean,
    ): void => {
      if (digits === 0) return;
      const isWrong = Math.abs(value - exact) > toleranceOf(size, digits) + slack;
      if (fast) {
        count.fastCertified += 1;
        count.fastWrong += Number(isWrong);
      } else {
        count.certified += 1;
        count.wrong += Number(isWrong);
      }
    };
    const small = Math.min(need!.chance, 1 - need!.chance);
    const chanceSlack = 2.6 * Math.sqrt(Math.max(1e-6, chance * (1 - chance)) / fresh.trials());
    check(need!.mean, truth.mean, need!.sd, need!.digits.mean, truth.sure.mean, false);
    check(need!.sd, truth.sd, need!.sd, need!.digits.sd, truth.sure.sd, false);
    check(
      need!.interval95[0],
      truth.interval95[0],
      need!.sd,
      need!.digits.low,
      truth.sure.low,
      false,
    );
    check(
      need!.interval95[1],
      truth.interval95[1],
      need!.sd,
      need!.digits.high,
      truth.sure.high,
      false,
    );
    if (small > 0.001) check(need!.chance, chance, small, need!.chanceDigits, chanceSlack, false);

    const quick = fastAnswer(model, asked, pointsOf(model, index, 256), index);
    const [figure] = quick.figures;
    for (const [estimate, exact, slack] of [
      [figure!.mean, truth.mean, truth.sure.mean],
      [figure!.sd, truth.sd, truth.sure.sd],
      [figure!.low, truth.interval95[0], truth.sure.low],
      [figure!.high, truth.interval95[1], truth.sure.high],
      [quick.chances[0]!, chance, chanceSlack],
    ] as const) {
      const size =
        estimate === quick.chances[0]
          ? Math.min(estimate.value, 1 - estimate.value)
          : figure!.sd.value;
      if (estimate.sure > toleranceOf(size, 1) || size < 0.001) continue;
      const digits = estimate.sure <= toleranceOf(size, 2) ? 2 : 1;
      check(estimate.value, exact, size, digits, slack, true);
    }
  });
  const held = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  const spread = shares.reduce((sum, share) => sum + (share - held) ** 2, 0);
  return { jobs, held, heldSe: Math.sqrt(spread / (jobs - 1) / jobs), ...count };
}

import { BATCH } from '../num/batch.ts';
import type { Distribution } from '../num/distribution.ts';
import { fillDraws } from '../num/draw.ts';
import { linearSolve } from '../num/linear-solve.ts';
import { meanOf, sdOf } from '../num/spread-of.ts';
import { fillWords } from '../num/stream.ts';
import { chiSquareShareBelow } from '../num/textbook.ts';
import type { Job } from '../job/job.ts';
import type { Deviation } from '../setup/deviation.ts';
import { misfitModel, type MisfitModel } from '../setup/misfit.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import type { Source } from '../sources/source.ts';
import { factor95, type Estimate } from './estimate.ts';

/** One figure of finished parts: of a need judged by one figure, or one axis of a need judged by two. */
export interface PartsFigure {
  readonly need: string;
  readonly axis: 'x' | 'y' | null;
  /** What each part came to, with nothing dialled in; parts by their number. */
  readonly values: ReadonlyMap<number, number>;
  readonly gaugeSd: number;
}

/** A figure of the shop before the parts and after them. */
export interface Learnt {
  /** Key of the shop file: `machine.lean`. */
  readonly of: string;
  readonly words: string;
  readonly before: { readonly value: number; readonly sd: number };
  readonly after: Estimate;
  /** Whether the parts tell it well enough to stand in for what was. */
  readonly isTold: boolean;
}

export type FromParts =
  | { readonly kind: 'learnt'; readonly figures: readonly Learnt[] }
  /** Nothing that the job says can be off explains such figures: a wrong turn, a misreading, another set-up. */
  | { readonly kind: 'not explained'; readonly chance: number }
  /** No figure hangs on the shop by more than it is known. */
  | { readonly kind: 'nothing' };

/** A figure is told when the parts leave no more than this part of its 95 % interval. */
const TOLD_SHARE = 0.8;
/** Figures less likely than this by all that can be off are not learnt from. */
const UNLIKELY = 0.001;
/** Kinds of needs that are nearly straight in what is off. */
const STRAIGHT = ['depth', 'web', 'size', 'wall', 'concentric', 'misalignment'];
const STAYS: readonly Source['recurs'][] = ['shop', 'power-up', 'setup'];

/**
 * What finished parts tell of the shop: every figure of it is moved as far as the parts ask for and no
 * further than it was known (linear regression of what stays, with what the set-up and each part bring of
 * their own). What two figures of the shop do alike stays divided between them. The scatter of the
 * parts counts when it is larger than predicted, and then few parts tell by Student's t.
 * `job` is as it was before these parts, with nothing dialled in.
 * Source: W. Bich, M. G. Cox and P. M. Harris, Metrologia 30 (1994) 495-502 (adding new readings to
 * known quantities by least squares).
 */
export function learntFromParts(job: Job, logged: readonly PartsFigure[]): FromParts {
  const misfit = misfitModel(job);
  const figures = logged.flatMap((figure) => {
    const judged = misfit.judged.find(({ need }) => need.name === figure.need);
    if (judged === undefined || !STRAIGHT.includes(judged.need.kind)) return [];
    if (figure.values.size === 0) return [];
    if (judged.shape === 'radial')
      return figure.axis === null
        ? []
        : [{ ...figure, at: (judged.x + (figure.axis === 'x' ? 0 : 1)) * BATCH }];
    return figure.axis === null ? [{ ...figure, at: judged.at * BATCH }] : [];
  });
  if (figures.length === 0) return { kind: 'nothing' };
  const inputs = sourcesOf(job, misfit.deviations).flatMap((source) =>
    source.deviations.map((k) => {
      const sd = sdOf(source.distribution);
      const mean = meanOf(source.distribution);
      // A t of few degrees of freedom has no sd; its scale is what is known.
      const known =
        source.distribution.kind === 'scaled-t' && !Number.isFinite(sd)
          ? source.distribution.scale
          : sd;
      return {
        source,
        of: shopKey(misfit.deviations[k]!),
        column: k * BATCH,
        mean: Number.isFinite(mean) ? mean : 0,
        sd: known,
      };
    }),
  );
  const draws = new Float64Array(misfit.deviations.length * BATCH);
  for (const { column, mean } of inputs) draws[column] = mean;
  const out = new Float64Array(misfit.outputCount * BATCH);
  const run = (): readonly number[] => {
    misfit.evaluate(draws, 1, out);
    return figures.map(({ at }) => out[at]!);
  };
  const trial = trialsOf(
    misfit,
    inputs.map(({ source, column }) => ({ distribution: source.distribution, column })),
    figures.map(({ at }) => at),
  );
  const expected = trial.means;
  // What one sd of each input does to every figure.
  const slopes = inputs.map(({ column, mean, sd }) => {
    if (sd === 0) return figures.map(() => 0);
    draws[column] = mean + sd;
    const up = run();
    draws[column] = mean - sd;
    const down = run();
    draws[column] = mean;
    return up.map((value, j) => (value - down[j]!) / 2);
  });
  const stays = inputs.flatMap(({ source }, k) => (STAYS.includes(source.recurs) ? [k] : []));
  const varies = inputs.flatMap(({ source }, k) => (STAYS.includes(source.recurs) ? [] : [k]));
  const means = figures.map(({ values }) => meanOfAll([...values.values()]));
  // What is not straight: a lean either way makes an opening wider, and the like.
  const bent = figures.map((_, j) =>
    Math.max(
      0,
      trial.variances[j]! - inputs.reduce((sum, _one, k) => sum + slopes[k]![j]! ** 2, 0),
    ),
  );
  const within = figures.map((_, j) => varies.reduce((sum, k) => sum + slopes[k]![j]! ** 2, 0));
  // Scatter that is larger than predicted counts, with as many degrees of freedom as it has.
  const larger = figures.map(({ values, gaugeSd }, j) => {
    const n = values.size;
    if (n < 2) return 1;
    const square = [...values.values()].reduce((sum, v) => sum + (v - means[j]!) ** 2, 0) / (n - 1);
    return Math.max(1, square / Math.max(within[j]! + gaugeSd ** 2, 1e-12));
  });
  const covariance = figures.map((one, i) =>
    figures.map((other, j) => {
      const shared = [...one.values.keys()].filter((part) => other.values.has(part)).length;
      const ofParts =
        (varies.reduce((sum, k) => sum + slopes[k]![i]! * slopes[k]![j]!, 0) *
          shared *
          Math.sqrt(larger[i]! * larger[j]!)) /
        (one.values.size * other.values.size);
      const ofStays = stays.reduce((sum, k) => sum + slopes[k]![i]! * slopes[k]![j]!, 0);
      // A gauge is off by the same on every part, so that its sd is whole in the mean.
      return ofStays + ofParts + (i === j ? one.gaugeSd ** 2 + bent[i]! + 1e-12 : 0);
    }),
  );
  const off = means.map((mean, j) => mean - expected[j]!);
  const weighed = linearSolve(covariance, off);
  if (weighed === null) return { kind: 'nothing' };
  // One gauge may be off alike in all figures; that is no more than its variance in each, times their number.
  const alike = covariance.map((row, i) =>
    row.map((value, j) => value + (i === j ? (figures.length - 1) * figures[i]!.gaugeSd ** 2 : 0)),
  );
  const careful = linearSolve(alike, off) ?? weighed;
  const chance = 1 - chiSquareShareBelow(dot(off, careful), figures.length);
  if (chance < UNLIKELY) return { kind: 'not explained', chance };
  const dof = Math.min(
    Infinity,
    ...figures.flatMap(({ values }, j) => (larger[j]! > 1 ? [values.size - 1] : [])),
  );
  const learnt = stays.flatMap((k): Learnt[] => {
    const { of, source, mean, sd } = inputs[k]!;
    const slope = slopes[k]!;
    if (of === null || sd === 0 || slope.every((one) => one === 0)) return [];
    const solved = linearSolve(covariance, slope);
    if (solved === null) return [];
    // In units of its own sd: moved by cov' S^-1 off, and its variance less cov' S^-1 cov.
    const left = Math.sqrt(Math.max(0, 1 - dot(slope, solved)));
    const isTold = left * factor95(dof) <= TOLD_SHARE * factor95(Infinity);
    return [
      {
        of,
        words: source.words,
        before: { value: mean, sd },
        after: { value: mean + sd * dot(solved, off), sd: sd * left, dof },
        isTold,
      },
    ];
  });
  return learnt.length === 0 ? { kind: 'nothing' } : { kind: 'learnt', figures: learnt };
}

/** Enough to tell a mean to a fiftieth of what a figure scatters by. */
const TRIAL_BATCHES = 3;
/** A t of few degrees of freedom is taken no further out than this. */
const MOST_SDS = 5;

/** Mean and variance of figures when everything is off as it may be. */
function trialsOf(
  misfit: MisfitModel,
  inputs: readonly { readonly distribution: Distribution; readonly column: number }[],
  at: readonly number[],
): { readonly means: readonly number[]; readonly variances: readonly number[] } {
  const draws = new Float64Array(misfit.deviations.length * BATCH);
  const out = new Float64Array(misfit.outputCount * BATCH);
  const words = new Int32Array(BATCH);
  const [sums, squares] = [at.map(() => 0), at.map(() => 0)];
  const count = TRIAL_BATCHES * BATCH;
  let base: readonly number[] | null = null;
  for (let batch = 0; batch < TRIAL_BATCHES; batch++) {
    inputs.forEach(({ distribution, column }, k) => {
      fillWords(SEED, k, batch, 0, words, BATCH);
      fillDraws(distribution, words, draws, column, BATCH);
      if (distribution.kind !== 'scaled-t') return;
      const { mean, scale } = distribution;
      for (let i = column; i < column + BATCH; i++)
        draws[i] = Math.max(mean - MOST_SDS * scale, Math.min(mean + MOST_SDS * scale, draws[i]!));
    });
    misfit.evaluate(draws, BATCH, out);
    base ??= at.map((from) => out[from]!);
    at.forEach((from, j) => {
      for (let i = from; i < from + BATCH; i++) {
        const off = out[i]! - base![j]!;
        sums[j]! += off;
        squares[j]! += off * off;
      }
    });
  }
  return {
    means: sums.map((sum, j) => base![j]! + sum / count),
    variances: squares.map((square, j) => square / count - (sums[j]! / count) ** 2),
  };
}

/** The same parts always tell the same. */
const SEED = 1;

/** The figure of the shop file behind a deviation that stays; null for what it does not have. */
function shopKey(deviation: Deviation): string | null {
  const { kind } = deviation;
  if (kind === 'machine-lean') return 'machine.lean';
  if (kind === 'cutter-radius') return `cutters.${deviation.cutter}.radius`;
  if (kind === 'scale' || kind === 'cutter-lean') return `machine.${kind}-${deviation.axis}`;
  return kind === 'bed-lean' ? `bed.lean-${deviation.axis}` : null;
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, k) => sum + value * b[k]!, 0);

const meanOfAll = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

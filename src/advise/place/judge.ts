import type { Job } from '../../job/job.ts';
import { BATCH } from '../../num/batch.ts';
import { deviationKey, type Deviation } from '../../setup/deviation.ts';
import { misfitModel } from '../../setup/misfit.ts';
import { sourcesOf } from '../../sources/sources-of.ts';
import { askedOf, fillFigure, fillGood, type Question } from '../../stackup/figure.ts';
import { inputsOf } from '../../stackup/inputs.ts';
import { keptDraws } from '../kept-draws.ts';

/** How good some places are. */
export interface Score {
  /** Chance, 0..1, that a blank meets every need. */
  readonly chance: number;
  /** Of the need that is nearest to its limit, how many standard deviations its mean is inside it. */
  readonly margin: number;
  /** 1 for each blank that is good. */
  readonly each: Uint8Array;
}

/** Fewer blanks than this more are luck, and steps after luck lead nowhere; a margin must grow by so many standard deviations. */
const [MORE_BLANKS, MORE_MARGIN] = [2, 0.02] as const;

/** Whether places are better than others by more than a hair: by chance; by margin where every blank is good, or none. */
export function isBetter(one: Score, other: Score): boolean {
  if (one.chance !== other.chance)
    return (one.chance - other.chance) * one.each.length >= MORE_BLANKS;
  const isEnd = one.chance === 0 || one.chance === 1;
  return isEnd && one.margin > other.margin + MORE_MARGIN;
}

/** The better of two first; hairs count. */
export const byScore = (one: Score, other: Score): number =>
  other.chance - one.chance || other.margin - one.margin;

/**
 * Scores a job; null when a blank did not seat, or when it is surely worse than `against` (by three standard errors
 * on the blanks tried so far, so that poor places cost little).
 */
export type Judge = (job: Job, against: Score | null) => Score | null;

/** Blanks after which it is looked whether more are needed. */
const CHUNK = 256;
const SURELY = 3;

/** A judge whose every job meets the same luck: also bumps, which a prediction draws anew for each place of an edge. */
export function judgeOf(seed: number, trials: number): Judge {
  const draws = keptDraws(seed);
  const fullOf = buffer();
  const outOf = buffer();
  return (job, against) => {
    const misfit = misfitModel(job);
    const keys = placelessKeys(misfit.deviations);
    const inputs = inputsOf(sourcesOf(job, misfit.deviations));
    const { figures, questions } = askedOf(misfit.judged);
    const full = fullOf(misfit.deviations.length * BATCH);
    const out = outOf(misfit.outputCount * BATCH);
    const values = figures.map(() => new Float64Array(BATCH));
    const sums = figures.map(() => ({ sum: 0, squares: 0 }));
    const isGood = new Uint8Array(BATCH);
    const each = new Uint8Array(trials).fill(1);
    for (let from = 0; from < trials; from += CHUNK) {
      const count = Math.min(CHUNK, trials - from);
      const [batch, at] = [Math.floor(from / BATCH), from % BATCH];
      for (const { deviation, source } of inputs) {
        const column = draws(keys[deviation]!, source.distribution, batch);
        full.set(column.subarray(at, at + count), deviation * BATCH);
      }
      misfit.evaluate(full, count, out);
      figures.forEach((figure, f) => {
        fillFigure(figure, out, values[f]!, count);
        addTo(sums[f]!, values[f]!, count);
      });
      if (sums.some(({ sum }) => Number.isNaN(sum))) return null;
      for (const question of questions) {
        fillGood(question, values, isGood, count);
        for (let i = 0; i < count; i++) each[from + i]! &= isGood[i]!;
      }
      if (against !== null && isSurelyWorse(each, against.each, from + count)) return null;
    }
    return scoreOf(each, marginOf(questions, sums, trials));
  };
}

/** Zeros of that length, in the same memory again and again. */
function buffer(): (length: number) => Float64Array {
  let held = new Float64Array(0);
  return (length) => {
    if (held.length < length) held = new Float64Array(length);
    else held.fill(0, 0, length);
    return held;
  };
}

function scoreOf(each: Uint8Array, margin: number): Score {
  const chance = each.reduce((sum, one) => sum + one, 0) / each.length;
  return { chance, margin, each };
}

function isSurelyWorse(each: Uint8Array, against: Uint8Array, count: number): boolean {
  let [better, worse] = [0, 0];
  for (let i = 0; i < count; i++) {
    if (each[i]! > against[i]!) better += 1;
    else if (each[i]! < against[i]!) worse += 1;
  }
  return worse - better > SURELY * Math.sqrt(better + worse);
}

interface Sums {
  sum: number;
  squares: number;
}

function addTo(sums: Sums, values: Float64Array, count: number): void {
  for (let i = 0; i < count; i++) {
    sums.sum += values[i]!;
    sums.squares += values[i]! * values[i]!;
  }
}

function marginOf(questions: readonly Question[], sums: readonly Sums[], n: number): number {
  const inSds = (f: number, roomOf: (mean: number) => number): number => {
    const mean = sums[f]!.sum / n;
    const sd = Math.sqrt(Math.max(0, sums[f]!.squares / n - mean * mean));
    const room = roomOf(mean);
    return room === 0 ? 0 : room / sd;
  };
  const rooms = questions.flatMap(({ lowest, highest, low, high }) => [
    ...(low === null ? [] : [inSds(lowest, (mean) => mean - low)]),
    ...(high === null ? [] : [inSds(highest, (mean) => high - mean)]),
  ]);
  const least = Math.min(...rooms);
  // Nothing asked, or nothing off at all.
  return Number.isFinite(least) ? least : Math.sign(least) * 1e9;
}

/** Bumps of an edge by the order in which they are met, so that a stop moved along it finds the same bump. */
function placelessKeys(deviations: readonly Deviation[]): readonly string[] {
  const met = new Map<string, number>();
  return deviations.map((deviation) => {
    if (deviation.kind !== 'bump') return deviationKey(deviation);
    const before = met.get(deviation.edge) ?? 0;
    met.set(deviation.edge, before + 1);
    return `bump/${deviation.edge}/number ${before}`;
  });
}

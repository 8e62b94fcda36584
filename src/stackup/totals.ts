import { BINS, quantileOfBins, shortestOfBins, type Counted } from '../num/histogram.ts';
import { invariant } from '../num/invariant.ts';
import { joinMoments, noMoments, sdOfMoments, type Moments } from '../num/moments.ts';
import { studentQuantile } from '../num/textbook.ts';
import { joinPlane, planeOfSome, type PlaneMoments } from './plane-moments.ts';
import type { BlockTally, FigureTally, Task } from './tally.ts';

/** Half-widths of 99 % intervals for the numbers of one figure: how far the trials leave each unsure. */
export interface Sure {
  readonly mean: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
}

/** One figure of all trials so far. */
export interface FigureTotal {
  readonly mean: number;
  readonly sd: number;
  readonly interval95: readonly [number, number];
  readonly shortest95: readonly [number, number];
  readonly sure: Sure;
}

/** All blocks so far, taken in their order, so that the sums are the same however many threads worked. */
export interface Totals {
  readonly take: (tally: BlockTally) => void;
  readonly blocks: () => number;
  readonly figure: (f: number) => FigureTotal;
  /** How sure the numbers are and the standard deviation alone: cheap, for after every block. */
  readonly sure: (f: number) => Sure & { readonly u: number };
  readonly plane: (k: number) => PlaneMoments;
  readonly good: readonly number[];
  readonly figureCount: number;
  readonly questionCount: number;
  readonly trials: () => number;
}

export function totalsOf(task: Task): Totals {
  const { figures, questions } = task.asked;
  const moments = figures.map(noMoments);
  const least = figures.map(() => Infinity);
  const greatest = figures.map(() => -Infinity);
  const bins = new Uint32Array(figures.length * BINS);
  const good = [...questions.map(() => 0), 0];
  const vectors = figures.filter(({ kind }) => kind === 'length');
  const planes = vectors.map(() => planeOfSome(new Float64Array(0), 0, 0));
  const scatters = figures.map(() => ({
    mean: noMoments(),
    sd: noMoments(),
    low: noMoments(),
    high: noMoments(),
  }));
  let blocks = 0;

  const sure = (f: number): Sure => {
    const scatter = scatters[f]!;
    const { width } = task.ranges[f]!;
    const unsure = (one: Moments): number =>
      blocks < 2 ? Infinity : (studentTail(blocks - 1) * sdOfMoments(one)) / Math.sqrt(blocks);
    // A constant has no bins to be lost in.
    const lost = least[f] === greatest[f] ? 0 : width / 2;
    return {
      mean: unsure(scatter.mean),
      sd: unsure(scatter.sd),
      low: unsure(scatter.low) + lost,
      high: unsure(scatter.high) + lost,
    };
  };
  return {
    good,
    figureCount: figures.length,
    questionCount: questions.length,
    blocks: () => blocks,
    trials: () => moments[0]?.count ?? blocks * task.batchTrials * task.blockBatches,
    take: (tally) => {
      invariant(tally.block === blocks, `block ${tally.block} came before block ${blocks}`);
      tally.figures.forEach((one, f) => {
        invariant(
          Number.isFinite(one.mean),
          'a trial did not seat: the contacts are too close for the spreads',
        );
        joinMoments(moments[f]!, one);
        least[f] = Math.min(least[f]!, one.least);
        greatest[f] = Math.max(greatest[f]!, one.greatest);
        joinScatter(scatters[f]!, one);
      });
      for (let k = 0; k < bins.length; k++) bins[k]! += tally.bins[k]!;
      tally.planes.forEach((plane, k) => {
        joinPlane(planes[k]!, plane);
      });
      tally.good.forEach((count, q) => {
        good[q]! += count;
      });
      blocks += 1;
    },
    sure: (f) => ({ ...sure(f), u: sdOfMoments(moments[f]!) }),
    figure: (f) => {
      const { count, mean } = moments[f]!;
      const counted: Counted = {
        bins,
        at: f * BINS,
        count,
        least: least[f]!,
        greatest: greatest[f]!,
      };
      const range = task.ranges[f]!;
      return {
        mean,
        sd: sdOfMoments(moments[f]!),
        interval95: [quantileOfBins(counted, range, 0.025), quantileOfBins(counted, range, 0.975)],
        shortest95: shortestOfBins(counted, range, 0.95),
        sure: sure(f),
      };
    },
    plane: (k) => planes[k]!,
  };
}

type Scatter = Readonly<Record<keyof Sure, Moments>>;

function joinScatter(scatter: Scatter, tally: FigureTally): void {
  const one = (value: number): Moments => ({ count: 1, mean: value, squares: 0 });
  joinMoments(scatter.mean, one(tally.mean));
  joinMoments(scatter.sd, one(sdOfMoments(tally)));
  joinMoments(scatter.low, one(tally.low));
  joinMoments(scatter.high, one(tally.high));
}

const tails = new Map<number, number>();

/** The two-sided 99 % point of Student's t: stricter than the standard's 2, for the digits are printed as certain. */
function studentTail(dof: number): number {
  const known = tails.get(dof);
  if (known !== undefined) return known;
  const tail = studentQuantile(0.995, dof);
  tails.set(dof, tail);
  return tail;
}

import { askedOf, fillFigure, fillGood } from '../../stackup/figure.ts';
import { BATCH } from '../../num/batch.ts';
import { deviationKey } from '../../setup/deviation.ts';
import type { MisfitModel } from '../../setup/misfit.ts';
import type { Source } from '../../sources/source.ts';
import { countBatches } from '../../stackup/count-batches.ts';
import { inputsOf } from '../../stackup/inputs.ts';
import { modelOf } from '../../stackup/model-of.ts';
import { atOnce } from '../../stackup/steps.ts';
import { taskOf } from '../../stackup/tally.ts';
import { evaluateAt } from '../../stackup/trials.ts';
import type { Estimate } from '../estimate.ts';
import { keptDraws } from '../kept-draws.ts';
import type { Luck } from '../outcome.ts';
import { centreOf, scaledAbout } from './scaled.ts';

/** What is wished for: of each need by itself, or that all of so many blanks meet every need (one: of every single blank). */
export type Wish =
  | { readonly kind: 'each-need'; readonly share: number }
  | { readonly kind: 'all-of'; readonly partCount: number; readonly share: number };

/** How the least likely need, or the batch, comes out with some sources larger or smaller. */
export interface Yield {
  readonly chance: Estimate;
  /** The least likely need by index; null for a wish about all of them. */
  readonly need: number | null;
  readonly isMet: boolean;
}

/** How many times as large each source is, by its id; 1 for those that are not there. */
export type Scales = ReadonlyMap<string, number>;

/** `until`: stop as soon as it is clear whether the wish is met; try some blanks, for a rough figure; or try every one. */
export type Yields = (scales: Scales, until: 'clear' | 'some tried' | 'all tried') => Yield;

/** Clear is what is this many standard errors off. */
const CLEAR = 4;
/** Batches that are drawn at most for a wish about several blanks. */
const MOST_BATCHES = 1000;
/** Enough for a rough figure: blanks, and batches. */
const [SOME_BLANKS, SOME_BATCHES] = [4096, 256] as const;

/** Tries one job's sources at other sizes on the same luck: draws keep their places in their spread. */
export const yieldsOf = (
  misfit: MisfitModel,
  sources: readonly Source[],
  luck: Luck,
  wish: Wish,
): Yields =>
  wish.kind === 'all-of' && wish.partCount > 1
    ? batchYields(misfit, sources, luck, wish)
    : blankYields(misfit, sources, luck, wish);

function blankYields(
  misfit: MisfitModel,
  sources: readonly Source[],
  { seed, trials }: Luck,
  wish: Wish,
): Yields {
  const draws = keptDraws(seed);
  const inputs = inputsOf(sources).map(({ deviation, source }) => ({
    deviation,
    source,
    key: deviationKey(misfit.deviations[deviation]!),
    centre: centreOf(source.distribution),
  }));
  const { figures, questions } = askedOf(misfit.judged);
  const full = new Float64Array(misfit.deviations.length * BATCH);
  const out = new Float64Array(misfit.outputCount * BATCH);
  const values = figures.map(() => new Float64Array(BATCH));
  const [isGood, isAllGood] = [new Uint8Array(BATCH), new Uint8Array(BATCH)];
  const isEach = wish.kind === 'each-need';
  return (scales, until) => {
    const good = isEach ? questions.map(() => 0) : [0];
    const most = until === 'some tried' ? Math.min(trials, SOME_BLANKS) : trials;
    for (let from = 0; ;) {
      const count = Math.min(BATCH, most - from);
      for (const { deviation, source, key, centre } of inputs) {
        const column = draws(key, source.distribution, from / BATCH);
        const by = scales.get(source.id) ?? 1;
        const at = deviation * BATCH;
        if (by === 1) full.set(column, at);
        else for (let i = 0; i < count; i++) full[at + i] = centre + by * (column[i]! - centre);
      }
      misfit.evaluate(full, count, out);
      figures.forEach((figure, f) => {
        fillFigure(figure, out, values[f]!, count);
      });
      isAllGood.fill(1);
      questions.forEach((question, q) => {
        fillGood(question, values, isGood, count);
        for (let i = 0; i < count; i++) {
          isAllGood[i]! &= isGood[i]!;
          if (isEach) good[q]! += isGood[i]!;
        }
      });
      if (!isEach) for (let i = 0; i < count; i++) good[0]! += isAllGood[i]!;
      from += count;
      const told = yieldOf(good, from, wish);
      if (from >= most || (until === 'clear' && isClear(good, from, wish.share))) return told;
    }
  };
}

function yieldOf(good: readonly number[], n: number, { kind, share }: Wish): Yield {
  const least = Math.min(n, ...good);
  return {
    chance: estimateAt(least / n, n),
    need: kind === 'each-need' && good.length > 0 ? good.indexOf(least) : null,
    isMet: least / n >= share,
  };
}

/** Never surer than one blank more or less. */
const estimateAt = (value: number, n: number): Estimate => ({
  value,
  se: Math.sqrt(Math.max(value * (1 - value), 1 / n) / n),
});

/** One need surely missed, or every one surely met. */
function isClear(good: readonly number[], n: number, share: number): boolean {
  const off = good.map((count) => {
    const { value, se } = estimateAt(count / n, n);
    return (value - share) / se;
  });
  return off.some((sds) => sds < -CLEAR) || off.every((sds) => sds > CLEAR);
}

/** What is set up once is off alike for all the blanks of a batch: the batches of a prediction, with other spreads. */
function batchYields(
  misfit: MisfitModel,
  sources: readonly Source[],
  { seed, trials }: Luck,
  wish: Extract<Wish, { kind: 'all-of' }>,
): Yields {
  const asked = askedOf(misfit.judged);
  const plan = { seed, batchTrials: BATCH, blockBatches: 1, mostBlocks: 1 };
  const wanted = Math.min(trials, MOST_BATCHES);
  return (scales, until) => {
    const scaled = sources.map((source) => ({
      ...source,
      distribution: scaledAbout(source.distribution, scales.get(source.id) ?? 1),
    }));
    const model = modelOf(misfit, scaled);
    const task = taskOf(model, asked, plan);
    const atNothing = evaluateAt(model, [new Float64Array(model.inputs.length)])[0]!;
    const of = (batches: number): Yield => {
      const counts = atOnce(
        countBatches(
          { ...misfit, partCount: wish.partCount },
          scaled,
          model,
          task,
          atNothing,
          batches,
        ),
      );
      const chance = estimateAt(counts.allGood / counts.batches, counts.batches);
      return { chance, need: null, isMet: chance.value >= wish.share };
    };
    if (until === 'all tried') return of(wanted);
    const few = of(Math.min(wanted, SOME_BATCHES));
    if (until === 'some tried') return few;
    return Math.abs(few.chance.value - wish.share) > CLEAR * few.chance.se ? few : of(wanted);
  };
}

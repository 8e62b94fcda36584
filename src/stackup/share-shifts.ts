import { BATCH } from '../num/batch.ts';
import { sdOf } from '../num/spread-of.ts';
import type { Distribution } from '../num/distribution.ts';
import { constantSlopes } from './fast/constant-slopes.ts';
import { fillFigure, type Figure } from './figure.ts';
import type { Model } from './model.ts';
import { drawBatch } from './trials.ts';

/** Fills `shifted` with the results that a group drawn afresh gives, from those of the first draws. */
export type Shift = (
  base: Float64Array,
  draws: Float64Array,
  fresh: Float64Array,
  count: number,
  shifted: Float64Array,
) => void;

/** What all shifts together leave unexplained of a figure's variance is to be less: a tenth of what a share is wanted to. */
const UNEXPLAINED = 0.001;
/** First and fresh draws of the check. */
const CHECK_LANES = [1, 2] as const;

/**
 * For each group of inputs that all move every result they are asked for by a constant slope, a shift in place of an
 * evaluation; null for the others. All such inputs are drawn afresh at once over 1024 trials, and what the model then says must be
 * what the shifts say, to a thousandth of each figure's variance; else every group is evaluated.
 */
export function shiftedGroups(
  model: Model,
  groups: readonly (readonly number[])[],
  figures: readonly Figure[],
  seed: number,
): readonly (Shift | null)[] {
  const none = groups.map(() => null);
  const outputs = [
    ...new Set(figures.flatMap((one) => (one.kind === 'column' ? [one.at] : [one.x, one.x + 1]))),
  ];
  const size = model.inputs.length * BATCH;
  const [draws, fresh] = CHECK_LANES.map((lane) => {
    const filled = new Float64Array(size);
    drawBatch(model, seed, 0, lane, filled);
    return filled;
  }) as [Float64Array, Float64Array];
  const base = new Float64Array(model.outputCount * BATCH);
  model.evaluate(draws, BATCH, base);
  const sds = Array.from({ length: model.outputCount }, (_, k) =>
    sdOfSome(base.subarray(k * BATCH, (k + 1) * BATCH)),
  );
  const slopes = constantSlopes(model, seed, sds, isShiftable);
  const bySlope = slopes.map((those) => new Map(those.map(({ input, slope }) => [input, slope])));
  const isConstant = (k: number): boolean =>
    model.inputs[k]!.distribution.kind === 'exactly' ||
    outputs.every((output) => bySlope[output]!.has(k));
  const shiftOf =
    (group: readonly number[]): Shift =>
    (from, first, second, count, shifted) => {
      for (const output of outputs) {
        const at = output * BATCH;
        for (let i = 0; i < count; i++) shifted[at + i] = from[at + i]!;
        for (const k of group) {
          const slope = bySlope[output]!.get(k) ?? 0;
          if (slope === 0) continue;
          for (let i = 0; i < count; i++)
            shifted[at + i]! += slope * (second[k * BATCH + i]! - first[k * BATCH + i]!);
        }
      }
    };
  const shifts = groups.map((group) => (group.every(isConstant) ? shiftOf(group) : null));
  const together = [...new Set(groups.filter((group) => group.every(isConstant)).flat())];
  if (together.length === 0) return none;
  const mixed = draws.slice();
  for (const k of together) mixed.set(fresh.subarray(k * BATCH, (k + 1) * BATCH), k * BATCH);
  const [said, real] = [new Float64Array(base.length), new Float64Array(base.length)];
  shiftOf(together)(base, draws, fresh, BATCH, said);
  model.evaluate(mixed, BATCH, real);
  const [before, one, other] = [0, 0, 0].map(() => new Float64Array(BATCH)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const isExplained = figures.every((figure) => {
    fillFigure(figure, base, before, BATCH);
    fillFigure(figure, said, one, BATCH);
    fillFigure(figure, real, other, BATCH);
    let squares = 0;
    for (let i = 0; i < BATCH; i++) squares += (one[i]! - other[i]!) ** 2;
    return squares / BATCH / 2 <= UNEXPLAINED * sdOfSome(before) ** 2;
  });
  return isExplained ? shifts : none;
}

/** Spreads whose middle tells of their ends; of two values alone it does not. */
function isShiftable(distribution: Distribution): boolean {
  const sd = sdOf(distribution);
  return (
    distribution.kind !== 'either' &&
    distribution.kind !== 'arcsine' &&
    distribution.kind !== 'scaled-t' &&
    Number.isFinite(sd) &&
    sd > 0
  );
}

function sdOfSome(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  const mean = sum / values.length;
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  return Math.sqrt(squares / (values.length - 1));
}

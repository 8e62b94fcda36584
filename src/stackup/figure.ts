import { BATCH } from '../num/batch.ts';
import type { Judged } from '../setup/judged.ts';

/** A number of each trial: one result as it stands, or the length of the vector in columns `x` and `x + 1`. */
export type Figure =
  | { readonly kind: 'column'; readonly at: number }
  | { readonly kind: 'length'; readonly x: number };

/** Whether a trial is good: its figure `lowest` not below `low`, its figure `highest` not above `high`. */
export interface Question {
  readonly lowest: number;
  readonly highest: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** What is told of each trial, and what is asked of it; figures by index, one question a need. */
export interface Asked {
  readonly figures: readonly Figure[];
  readonly questions: readonly Question[];
}

export function askedOf(judged: readonly Judged[]): Asked {
  const figures: Figure[] = [];
  const questions = judged.map((one): Question => {
    const lowest = figures.length;
    if (one.shape === 'radial') {
      figures.push({ kind: 'length', x: one.x });
      return { lowest, highest: lowest, low: null, high: one.high };
    }
    figures.push({ kind: 'column', at: one.at });
    if (one.columnCount === 2) figures.push({ kind: 'column', at: one.at + 1 });
    return { lowest, highest: figures.length - 1, low: one.low, high: one.high };
  });
  return { figures, questions };
}

/** Fills `values` with a figure of `count` trials of one batch. */
export function fillFigure(
  figure: Figure,
  out: Float64Array,
  values: Float64Array,
  count: number,
): void {
  if (figure.kind === 'column') {
    const at = figure.at * BATCH;
    for (let i = 0; i < count; i++) values[i] = out[at + i]!;
    return;
  }
  const [x, y] = [figure.x * BATCH, (figure.x + 1) * BATCH];
  for (let i = 0; i < count; i++) {
    const [a, b] = [out[x + i]!, out[y + i]!];
    values[i] = Math.sqrt(a * a + b * b);
  }
}

/** Puts 1 for each trial that answers a question well, else 0; `values` holds the figures' columns. */
export function fillGood(
  { lowest, highest, low, high }: Question,
  values: readonly Float64Array[],
  good: Uint8Array,
  count: number,
): void {
  const [lows, highs] = [values[lowest]!, values[highest]!];
  const [least, most] = [low ?? -Infinity, high ?? Infinity];
  for (let i = 0; i < count; i++) good[i] = lows[i]! >= least && highs[i]! <= most ? 1 : 0;
}

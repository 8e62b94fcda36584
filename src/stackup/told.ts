import { digitsOf } from './digits.ts';
import type { Certainty } from './prediction.ts';
import type { FigureTotal } from './totals.ts';

/** What a figure's trials tell: its numbers, how sure each is, and how many digits that leaves. */
export function toldOf(total: FigureTotal): {
  readonly mean: number;
  readonly sd: number;
  readonly interval95: readonly [number, number];
  readonly shortest95: readonly [number, number];
  readonly sure: Certainty;
  readonly digits: Certainty;
} {
  const { mean, sd, interval95, shortest95, sure } = total;
  const digits = (number: number): number => digitsOf(sd, number);
  return {
    mean,
    sd,
    interval95,
    shortest95,
    sure,
    digits: {
      mean: digits(sure.mean),
      sd: digits(sure.sd),
      low: digits(sure.low),
      high: digits(sure.high),
    },
  };
}

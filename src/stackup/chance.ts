import { chanceInterval } from '../num/textbook.ts';
import { chanceDigits } from './digits.ts';

/** The two-sided 99 % point of the standard normal. */
const Z_995 = 2.5758293035489004;

export interface Chance {
  readonly chance: number;
  /** How far it may be off, 95 times in 100. */
  readonly chance95: readonly [number, number];
  /** Standard error, never 0. */
  readonly chanceSe: number;
  /** How far the trials leave it unsure: the half-width of a 99 % interval. */
  readonly chanceSure: number;
  /** Certain digits of its smaller side, as for `Figures.digits`. */
  readonly chanceDigits: number;
}

/** The chance that `good` of `count` trials show. */
export function chanceOf(good: number, count: number): Chance {
  const chance = good / count;
  const chance95 = chanceInterval(good, count, 0.95);
  const chanceSe = Math.sqrt(Math.max(chance * (1 - chance), 1 / count) / count);
  const chanceSure = Z_995 * chanceSe;
  return {
    chance,
    chance95,
    chanceSe,
    chanceSure,
    chanceDigits: chanceDigits(chance, chanceSure, chance95),
  };
}

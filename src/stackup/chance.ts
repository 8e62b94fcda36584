import { chanceInterval } from '../num/textbook.ts';

/** The chance that `good` of `count` trials show, how far it may be off, and its standard error (never 0). */
export function chanceOf(
  good: number,
  count: number,
): {
  readonly chance: number;
  readonly chance95: readonly [number, number];
  readonly chanceSe: number;
} {
  const chance = good / count;
  return {
    chance,
    chance95: chanceInterval(good, count, 0.95),
    chanceSe: Math.sqrt(Math.max(chance * (1 - chance), 1 / count) / count),
  };
}

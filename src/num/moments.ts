/** Count, mean and sum of squared deviations of a figure so far. */
export interface Moments {
  count: number;
  mean: number;
  squares: number;
}

export const noMoments = (): Moments => ({ count: 0, mean: 0, squares: 0 });

/**
 * Adds a second group to the first. Source: T. F. Chan, G. H. Golub and R. J. LeVeque, The American
 * Statistician 37 (1983) 242-247.
 */
export function joinMoments(into: Moments, other: Moments): void {
  const count = into.count + other.count;
  if (count === 0) return;
  const off = other.mean - into.mean;
  into.squares += other.squares + (off * off * into.count * other.count) / count;
  into.mean += (off * other.count) / count;
  into.count = count;
}

/** Moments of `count` values, by two passes. */
export function momentsOfSome(values: Float64Array, count: number): Moments {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += values[i]!;
  const first = sum / count;
  let squares = 0;
  let rest = 0;
  for (let i = 0; i < count; i++) {
    const off = values[i]! - first;
    squares += off * off;
    rest += off;
  }
  return { count, mean: first + rest / count, squares: squares - (rest * rest) / count };
}

/** Standard deviation (n - 1). */
export function sdOfMoments({ count, squares }: Moments): number {
  return count > 1 ? Math.sqrt(Math.max(0, squares) / (count - 1)) : 0;
}

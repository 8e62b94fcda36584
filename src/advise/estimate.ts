/** A number and its standard error. */
export interface Estimate {
  readonly value: number;
  readonly se: number;
}

/** The share of ones among zeros and ones; never surer than one trial in all would change it. */
export function estimateOf(each: Uint8Array): Estimate {
  const n = each.length;
  let good = 0;
  for (let i = 0; i < n; i++) good += each[i]!;
  const value = good / n;
  return { value, se: Math.sqrt(Math.max(value * (1 - value), 1 / n) / n) };
}

/**
 * By how much more often `after` is good than `before` on the same trials, with its standard error: only trials
 * that changed count. With b that turned good and c that turned bad: (b - c) / n, variance ((b + c) - (b - c)^2 / n) / n^2
 * (the sample variance of +1, 0, -1); never surer than one trial more or less.
 */
export function gainOf(before: Uint8Array, after: Uint8Array): Estimate {
  const n = Math.min(before.length, after.length);
  let [better, worse] = [0, 0];
  for (let i = 0; i < n; i++) {
    if (after[i]! > before[i]!) better += 1;
    else if (after[i]! < before[i]!) worse += 1;
  }
  const value = (better - worse) / n;
  const variance = Math.max(better + worse - n * value * value, 1) / (n * n);
  return { value, se: Math.sqrt(variance) };
}

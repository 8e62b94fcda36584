/**
 * Trials are worked in batches of this many, columns of draws: draw `k` of trial `i` stands at
 * `k * BATCH + i`. A Sobol block and a second-level cache both like 1024.
 */
export const BATCH = 1024;

/**
 * Counts of a figure in 16 382 equal bins of a range and in one bin below and one above it: a million
 * trials in 32 kB. Quantiles out of it are off by less than one bin.
 */
export const BINS = 16_384;

/** Where the bins lie: `from` is the lower end of the first of the inner bins, each `width` wide. */
export interface BinRange {
  readonly from: number;
  readonly width: number;
}

/** Counts of one figure, and the least and the greatest that were counted. */
export interface Counted {
  readonly bins: ArrayLike<number>;
  /** Where this figure's bins start. */
  readonly at: number;
  readonly count: number;
  readonly least: number;
  readonly greatest: number;
}

/**
 * A range that holds nearly all trials of a figure, from a few hundred of them: three times as wide as
 * its middle 99 %, so that heavy tails do not stretch it. A figure that never changed gets a narrow one.
 */
export function binRangeOf(pilot: Float64Array): BinRange {
  const sorted = pilot.slice().sort();
  const tail = Math.floor(sorted.length * 0.005);
  const [low, high] = [sorted[tail]!, sorted[sorted.length - 1 - tail]!];
  // 2^-30 of its size keeps a constant's bins above the rounding of the subtraction.
  const span = high > low ? high - low : Math.max(Math.abs(low), 1) * 2 ** -30;
  return { from: low - span, width: (3 * span) / (BINS - 2) };
}

/** Adds `count` values to the bins that start at `at`. */
export function countInto(
  bins: Uint16Array,
  at: number,
  { from, width }: BinRange,
  values: Float64Array,
  count: number,
): void {
  const perWidth = 1 / width;
  for (let i = 0; i < count; i++) {
    const place = (values[i]! - from) * perWidth + 1;
    const bin = place < 1 ? 0 : place >= BINS - 1 ? BINS - 1 : place | 0;
    bins[at + bin] = bins[at + bin]! + 1;
  }
}

/** The value below which a share `p` of the counted lies, even shares of a bin standing for its inside. */
export function quantileOfBins(counted: Counted, range: BinRange, p: number): number {
  const { bins, at, count, least, greatest } = counted;
  const rank = p * count;
  let below = 0;
  for (let k = 0; k < BINS; k++) {
    const here = bins[at + k]!;
    if (here > 0 && below + here >= rank) {
      const [low, high] = binEnds(k, range, least, greatest);
      return low + ((high - low) * (rank - below)) / here;
    }
    below += here;
  }
  return greatest;
}

/** The shortest stretch from bin end to bin end that holds a share `p`. Source: JCGM 101:2008, 5.3.4. */
export function shortestOfBins(
  counted: Counted,
  range: BinRange,
  p: number,
): readonly [number, number] {
  const { bins, at, count, least, greatest } = counted;
  const wanted = p * count;
  let best: readonly [number, number] = [least, greatest];
  let held = 0;
  let first = 0;
  for (let last = 0; last < BINS; last++) {
    held += bins[at + last]!;
    while (first < last && held - bins[at + first]! >= wanted) {
      held -= bins[at + first]!;
      first += 1;
    }
    if (held < wanted) continue;
    const low = binEnds(first, range, least, greatest)[0];
    const [from, to] = binEnds(last, range, least, greatest);
    // The last bin is taken only as far as it is needed.
    const spare = bins[at + last]! > 0 ? (held - wanted) / bins[at + last]! : 0;
    const high = to - (to - from) * Math.min(1, spare);
    if (high - low < best[1] - best[0]) best = [low, high];
  }
  return best;
}

function binEnds(
  bin: number,
  { from, width }: BinRange,
  least: number,
  greatest: number,
): readonly [number, number] {
  const low = bin === 0 ? least : from + (bin - 1) * width;
  const high = bin === BINS - 1 ? greatest : from + bin * width;
  return [Math.max(low, least), Math.min(Math.max(high, least), greatest)];
}

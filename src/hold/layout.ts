import type { BoltWish } from '../job/holding.ts';
import { fitTogether, isSameBolt } from './candidates.ts';
import { holdNumbers } from './numbers.ts';
import type { StrapPlace } from './strap-place.ts';
import type { Verdict } from './verdict.ts';

/** A set of straps for one placing. */
export interface Layout {
  readonly straps: readonly StrapPlace[];
  readonly verdict: Verdict;
  /** `exact`: every set was looked at. `near`: the search was cut short, or bolts stand in steps along tracks. */
  readonly search: 'exact' | 'near';
}

export interface LayoutTask {
  readonly free: readonly StrapPlace[];
  readonly wish: BoltWish;
  /** Bolts of the other placing: of sets that hold as well, the one that uses more of them is taken. */
  readonly others: readonly StrapPlace[];
  /** The verdict of a set; `least` allows it to stop once the factor is below. */
  readonly judge: (straps: readonly StrapPlace[], least: number) => Verdict;
  readonly inSteps: boolean;
}

/** Holding this much more than needed is as good as holding more. */
const PLENTY = 1.25;
/** Sets of one size that are judged, the most spread out first; where there are more, the search is not exact. */
const MOST_SETS = 150;
/** Sets of one size that are looked at, at most, to find those. */
const MOST_LISTED = 20_000;

/**
 * The fewest straps that hold, two at least, and of those sets the one that holds best; a set that holds plenty is as
 * good as another, and then the one that shares most bolts with the other placing is taken. Without one
 * that holds, the best there is; null when no strap can lie, or the pinned bolts cannot all be used.
 */
export function bestLayout(task: LayoutTask): Layout | null {
  const pinned = task.wish.pin;
  const { free } = task;
  const most = Math.min(free.length, stock(free));
  const fewest = Math.min(most, holdNumbers.fewestStraps);
  let best: Layout | null = null;
  let isCut = task.inSteps;
  for (let size = Math.max(fewest, pinned.length, 1); size <= most; size++) {
    const listed: (readonly StrapPlace[])[] = [];
    for (const straps of sets(free, size)) {
      if (!pinned.every((at) => straps.some(({ bolt }) => isSameBolt(bolt.onBed, at)))) continue;
      if (!isInStock(straps)) continue;
      listed.push(straps);
      if (listed.length >= MOST_LISTED) break;
    }
    isCut ||= listed.length > MOST_SETS;
    const promising = listed
      .map((straps) => ({ straps, spread: spreadOf(straps) }))
      .toSorted((a, b) => b.spread - a.spread)
      .slice(0, MOST_SETS);
    for (const { straps } of promising) {
      const least = best === null ? -Infinity : Math.min(best.verdict.factor, plenty(best.verdict));
      const verdict = task.judge(straps, least * 0.999);
      if (best === null || isBetter(straps, verdict, best, task.others))
        best = { straps, verdict, search: 'exact' };
    }
    if (best?.verdict.isHeld === true) break;
  }
  return best === null ? null : { ...best, search: isCut ? 'near' : 'exact' };
}

/** Straps far apart hold best against turning, and a set is as good as its nearest two: its promise. */
function spreadOf(straps: readonly StrapPlace[]): number {
  let least = Infinity;
  straps.forEach((one, k) => {
    for (const other of straps.slice(k + 1))
      least = Math.min(
        least,
        Math.hypot(one.padAt.x - other.padAt.x, one.padAt.y - other.padAt.y) *
          Math.min(one.leastN, other.leastN),
      );
  });
  return least === Infinity ? straps[0]!.leastN : least;
}

const plenty = ({ neededFactor }: Verdict): number => neededFactor * PLENTY;

function isBetter(
  straps: readonly StrapPlace[],
  verdict: Verdict,
  best: Layout,
  others: readonly StrapPlace[],
): boolean {
  const [now, before] = [verdict, best.verdict].map((one) => Math.min(one.factor, plenty(one))) as [
    number,
    number,
  ];
  // More straps are only taken for a clear gain.
  const by = straps.length > best.straps.length ? 1e-3 : 1e-9;
  if (Math.abs(now - before) > by * (1 + before)) return now > before;
  if (straps.length !== best.straps.length) return false;
  const shared = sharedWith(straps, others) - sharedWith(best.straps, others);
  return shared !== 0 ? shared > 0 : verdict.factor > best.verdict.factor;
}

const sharedWith = (straps: readonly StrapPlace[], others: readonly StrapPlace[]): number =>
  straps.filter((strap) => others.some((other) => isSameBolt(strap.bolt.onBed, other.bolt.onBed)))
    .length;

/** How many straps the shop has, of the kinds that can lie. */
const stock = (free: readonly StrapPlace[]): number =>
  [...new Set(free.map(({ strap }) => strap))].reduce((sum, { count }) => sum + count, 0);

export const isInStock = (straps: readonly StrapPlace[]): boolean =>
  straps.every(({ strap }) => straps.filter((one) => one.strap === strap).length <= strap.count);

/** Every set of that size whose straps can lie at once. */
function* sets(
  free: readonly StrapPlace[],
  size: number,
  from = 0,
  chosen: readonly StrapPlace[] = [],
): Generator<readonly StrapPlace[]> {
  if (chosen.length === size) {
    yield chosen;
    return;
  }
  for (let k = from; k <= free.length - (size - chosen.length); k++) {
    const next = free[k]!;
    if (chosen.every((one) => fitTogether(one, next)))
      yield* sets(free, size, k + 1, [...chosen, next]);
  }
}

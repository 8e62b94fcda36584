import { snapped, type Dial } from './dial.ts';
import { byScore, isBetter, type Score } from './judge.ts';

/** Places with their score. */
export interface Found {
  readonly at: readonly number[];
  readonly score: Score;
}

export interface Asked {
  readonly dials: readonly Dial[];
  /** Null where the places cannot be, or are surely worse than `against`. */
  readonly score: (at: readonly number[], against: Score | null) => Score | null;
  /** Whether it can be made there; asked only of what would be taken, for it lays out stops and cutters. */
  readonly admits: (at: readonly number[]) => boolean;
  /** Where to begin beside the grid; the first is never left for something worse. */
  readonly starts: readonly (readonly number[])[];
  readonly grid: 'grid' | 'none';
}

/** Most places of the coarse grid, and most levels of one dial in it. */
const [MOST_IN_GRID, MOST_LEVELS] = [130, 9] as const;
/** Places of the grid from which it is climbed, and how many may turn out not to be makeable before it is given up. */
const [CLIMBED, MOST_REFUSED] = [2, 12] as const;

/** Steps of the pattern search as shares of each dial's reach: nobody sets a button closer than the last, and no need feels it. */
const [FIRST, LAST] = [1 / 8, 1 / 64] as const;

/**
 * The best places: a coarse grid, then pattern search (R. Hooke and T. A. Jeeves, J. ACM 8 (1961) 212-229) with steps that
 * halve, moves of two neighbouring dials together included. No luck in it: the same job gives the same places.
 * Null when nothing that was tried can be. Yields after each look.
 */
export function* searchPlaces(asked: Asked): Generator<void, Found | null> {
  const looked = remembered(asked);
  let best: Found | null = null;
  const take = (found: Found | null): void => {
    if (found !== null && (best === null || isBetter(found.score, best.score))) best = found;
  };
  for (const start of asked.starts) {
    yield;
    const score = looked.score(start, null);
    if (score === null || !looked.admits(start)) continue;
    take(yield* climbed(asked.dials, looked, { at: start, score }));
  }
  if (asked.grid === 'grid') {
    const all: Found[] = [];
    // Raced against what can be made: the best of the grid may turn out not to be.
    const against = scoreOf(best);
    for (const at of gridOf(asked.dials)) {
      yield;
      const score = looked.score(at, against);
      if (score !== null) all.push({ at, score });
    }
    let [climbs, refused] = [0, 0];
    for (const one of all.toSorted((a, b) => byScore(a.score, b.score))) {
      if (climbs === CLIMBED || refused === MOST_REFUSED) break;
      if (looked.admits(one.at)) {
        climbs += 1;
        take(yield* climbed(asked.dials, looked, one));
      } else refused += 1;
    }
  }
  return best;
}

const scoreOf = (found: Found | null): Score | null => found?.score ?? null;

interface Looked {
  readonly score: (at: readonly number[], against: Score | null) => Score | null;
  readonly admits: (at: readonly number[]) => boolean;
}

function remembered({ score, admits }: Asked): Looked {
  const scores = new Map<string, Score | null>();
  const admitted = new Map<string, boolean>();
  return {
    score: (at, against) => once(scores, at, () => score(at, against)),
    admits: (at) => once(admitted, at, () => admits(at)),
  };
}

function once<T>(known: Map<string, T>, at: readonly number[], now: () => T): T {
  const key = at.join(' ');
  if (known.has(key)) return known.get(key)!;
  const found = now();
  known.set(key, found);
  return found;
}

function* climbed(dials: readonly Dial[], looked: Looked, from: Found): Generator<void, Found> {
  let best = from;
  for (let share = FIRST; share >= LAST; share /= 2) {
    const steps = dials.map(({ low, high, step }) => Math.max(step, (high - low) * share));
    for (;;) {
      const better: Found | null = yield* betterNear(dials, looked, best, steps);
      if (better === null) break;
      best = yield* onward(dials, looked, best, better);
    }
    if (steps.every((step, k) => step <= dials[k]!.step)) break;
  }
  return best;
}

/** The first better place one move away: single dials before pairs. */
function* betterNear(
  dials: readonly Dial[],
  looked: Looked,
  best: Found,
  steps: readonly number[],
): Generator<void, Found | null> {
  for (const move of movesOf(dials.length)) {
    const at = dials.map((dial, k) =>
      move[k] === 0 ? best.at[k]! : snapped(dial, best.at[k]! + move[k]! * steps[k]!),
    );
    yield;
    const found = betterAt(looked, at, best);
    if (found !== null) return found;
  }
  return null;
}

/** As far again in the same direction, as long as that helps. */
function* onward(
  dials: readonly Dial[],
  looked: Looked,
  before: Found,
  after: Found,
): Generator<void, Found> {
  let [last, best] = [before, after];
  for (;;) {
    const at = dials.map((dial, k) => snapped(dial, 2 * best.at[k]! - last.at[k]!));
    yield;
    const found = betterAt(looked, at, best);
    if (found === null) return best;
    [last, best] = [best, found];
  }
}

function betterAt(looked: Looked, at: readonly number[], best: Found): Found | null {
  const score = looked.score(at, best.score);
  if (score === null || !isBetter(score, best.score) || !looked.admits(at)) return null;
  return { at, score };
}

/** Single dials, then neighbours together: two ends of a fence, the two figures of a dowel pair. */
function movesOf(count: number): readonly (readonly number[])[] {
  const zero = Array.from({ length: count }, () => 0);
  const singles = zero.flatMap((_, k) => [1, -1].map((way) => zero.with(k, way)));
  const pairs = zero.slice(1).flatMap((_, k) =>
    [
      [1, -1],
      [-1, 1],
      [1, 1],
      [-1, -1],
    ].map(([a, b]) => zero.with(k, a!).with(k + 1, b!)),
  );
  return [...singles, ...pairs];
}

/** Every dial at as many levels as the size of the grid allows; dials in any number, two levels at least. */
function gridOf(dials: readonly Dial[]): readonly (readonly number[])[] {
  const levels = Math.max(
    2,
    Math.min(MOST_LEVELS, Math.floor(MOST_IN_GRID ** (1 / Math.max(1, dials.length)) + 1e-9)),
  );
  return dials.reduce<readonly (readonly number[])[]>(
    (all, dial) => all.flatMap((at) => levelsOf(dial, levels).map((value) => [...at, value])),
    [[]],
  );
}

/** Middles of equal stretches of a dial's reach. */
const levelsOf = (dial: Dial, count: number): readonly number[] => [
  ...new Set(
    Array.from({ length: count }, (_, k) =>
      snapped(dial, dial.low + ((dial.high - dial.low) * (k + 0.5)) / count),
    ),
  ),
];

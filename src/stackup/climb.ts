import { BATCH } from '../num/batch.ts';
import { limitsOf } from '../num/spread-of.ts';
import { streamOf } from '../num/stream.ts';
import type { Model } from './model.ts';
import type { Steps } from './steps.ts';
import { evaluateAt } from './trials.ts';

export type Limits = readonly (readonly [number, number])[];

/** What is sought the greatest of, in the results of one place. */
export type Score = (result: readonly number[]) => number;

/** The limits of every input; of unbounded ones as in registration.md rule 12. */
export const limitsOfInputs = (model: Model): Limits =>
  model.inputs.map(({ distribution }) => limitsOf(distribution));

/** Where as little as possible is off. */
export const nearestToNothing = (limits: Limits): Float64Array =>
  Float64Array.from(limits, ([low, high]) => Math.min(high, Math.max(low, 0)));

/** Shares of the way between the limits at which the greatest may lie when it is at no corner. */
const BETWEEN = [0.5, 0.25, 0.75];
/** By halves down to 2^-26 of the way between the limits a place between them is refined. */
const HALVINGS = 26;
/** So many corners by luck to start from, besides those that somebody has a reason for. */
const LUCKY = 4;
const LUCKY_ID = 0x70616972;
/** So few inputs have all their corners looked at. */
const ALL_CORNERS = 12;
/** Of the inputs that change the score most: all corners of so many, and all pairs of so many. */
const TOGETHER = 9;
const PAIRED = 32;

/** A place and its score. */
interface Reached {
  readonly here: Float64Array;
  best: number;
}

/**
 * The greatest score with every input within its limits that a search comes to. With up to 12 inputs it looks at
 * all corners; with more it goes from each start and from a few corners by luck over corners by changes of single
 * inputs, and at the best tries all corners of the inputs that matter most and all changes of two at once. Then
 * places between the limits. A search, not a proof: never more than the truth; where many inputs must change at
 * once it can be less (tests/stackup/worst-brute.deep.ts tells how often).
 */
export function* greatest(
  model: Model,
  limits: Limits,
  starts: readonly Float64Array[],
  score: Score,
): Steps<number> {
  const scored = (here: Float64Array): Reached => ({
    here: here.slice(),
    best: score(evaluateAt(model, [here])[0]!),
  });
  const corners = cornersOf(limits);
  const wide = limits.flatMap(([low, high], k) => (low === high ? [] : [k]));
  if (wide.length <= ALL_CORNERS) {
    const top = scored(starts[0]!);
    yield* allCorners(model, top, score, limits, wide);
    yield* between(model, top, score, limits);
    const near = scored(starts.at(-1)!);
    yield* between(model, near, score, limits);
    return Math.max(top.best, near.best);
  }
  const tops: Reached[] = [];
  for (const start of starts) {
    const top = scored(start);
    while (improved(model, top, score, corners)) yield STAGE;
    tops.push(top);
  }
  for (let k = 0; k < LUCKY; k++) {
    const word = streamOf(k, LUCKY_ID, 0, 1);
    const top = scored(Float64Array.from(limits, ([low, high]) => (word() % 2 === 0 ? low : high)));
    while (turned(model, top, score, limits)) yield STAGE;
    while (improved(model, top, score, corners)) yield STAGE;
    tops.push(top);
  }
  const top = tops.reduce((one, other) => (other.best > one.best ? other : one));
  while (mended(model, top, score, limits)) {
    yield STAGE;
    while (improved(model, top, score, corners)) yield STAGE;
  }
  // Places between the limits lie near different corners: from the best, and from each that had a reason.
  let best = -Infinity;
  for (const one of distinct([top, ...tops.slice(0, starts.length)])) {
    yield* between(model, one, score, limits);
    best = Math.max(best, one.best);
  }
  return best;
}

function* allCorners(
  model: Model,
  top: Reached,
  score: Score,
  limits: Limits,
  wide: readonly number[],
): Steps<void> {
  const all = 2 ** wide.length;
  for (let from = 0; from < all; from += BATCH) {
    yield STAGE;
    const places = Array.from({ length: Math.min(BATCH, all - from) }, (_, mask) =>
      withChanges(
        top.here,
        wide.map((k, bit) => ({ k, end: limits[k]![((from + mask) >> bit) % 2]! })),
      ),
    );
    movedTo(model, top, score, places);
  }
}

const distinct = (tops: readonly Reached[]): readonly Reached[] =>
  tops.filter(
    ({ here }, index) =>
      !tops.slice(0, index).some((one) => one.here.every((value, k) => value === here[k]!)),
  );

const STAGE = { phase: 'worst case', done: 0 } as const;

/** From the best corner to places between the limits, if any is better. */
function* between(model: Model, top: Reached, score: Score, limits: Limits): Steps<void> {
  const inside = (k: number): number[] => {
    const [low, high] = limits[k]!;
    return BETWEEN.map((share) => low + share * (high - low));
  };
  yield STAGE;
  if (!improved(model, top, score, inside)) return;
  while (improved(model, top, score, inside)) yield STAGE;
  while (improved(model, top, score, cornersOf(limits))) yield STAGE;
  for (let halving = 3; halving <= HALVINGS; halving++) {
    const step = 2 ** -halving;
    const nearby = (k: number): number[] => {
      const [low, high] = limits[k]!;
      // Finer than 2^-7 only what lies between its limits already.
      if (halving > 7 && (top.here[k] === low || top.here[k] === high)) return [];
      return [-1, 1].map((sign) =>
        Math.min(high, Math.max(low, top.here[k]! + sign * step * (high - low))),
      );
    };
    do {
      while (improved(model, top, score, nearby)) yield STAGE;
      yield STAGE;
    } while (slid(model, top, score, limits, step));
  }
}

/** So many of the inputs that lie between their limits are moved two at a time. */
const SLIDING = 8;

/** Along a ridge, where one input alone only loses: moves two that lie between their limits by a step each. */
function slid(model: Model, top: Reached, score: Score, limits: Limits, step: number): boolean {
  const inside = limits
    .flatMap(([low, high], k) => (top.here[k]! > low && top.here[k]! < high ? [k] : []))
    .slice(0, SLIDING);
  const by = (k: number, sign: number): Change => {
    const [low, high] = limits[k]!;
    const end = top.here[k]! + sign * step * (high - low);
    return { k, end: Math.min(high, Math.max(low, end)) };
  };
  const places = inside.flatMap((one, i) =>
    inside
      .slice(0, i)
      .flatMap((two) =>
        [-1, 1].flatMap((a) => [-1, 1].map((b) => withChanges(top.here, [by(one, a), by(two, b)]))),
      ),
  );
  return movedTo(model, top, score, places);
}

/** The limits of an input that has a width. */
const cornersOf = (limits: Limits) => (k: number) => {
  const [low, high] = limits[k]!;
  return low === high ? [] : [low, high];
};

interface Change {
  readonly k: number;
  readonly end: number;
}

/** What every single change to one of `ends` comes to. */
function changesOf(
  model: Model,
  here: Float64Array,
  score: Score,
  ends: (k: number) => readonly number[],
): readonly { readonly change: Change; readonly value: number }[] {
  const changes = Array.from(here, (value, k) =>
    ends(k)
      .filter((end) => end !== value)
      .map((end) => ({ k, end })),
  ).flat();
  return evaluateAt(
    model,
    changes.map((change) => withChanges(here, [change])),
  ).map((result, index) => ({ change: changes[index]!, value: score(result) }));
}

function withChanges(here: Float64Array, changes: readonly Change[]): Float64Array {
  const place = here.slice();
  for (const { k, end } of changes) place[k] = end;
  return place;
}

/** Moves to the best of some places, if any is better. */
function movedTo(
  model: Model,
  top: Reached,
  score: Score,
  places: readonly Float64Array[],
): boolean {
  let winner = -1;
  evaluateAt(model, places).forEach((result, index) => {
    const value = score(result);
    if (value > top.best) {
      top.best = value;
      winner = index;
    }
  });
  if (winner >= 0) top.here.set(places[winner]!);
  return winner >= 0;
}

/** Moves to the best of the places that single inputs at their `ends` give, if any is better. */
function improved(
  model: Model,
  top: Reached,
  score: Score,
  ends: (k: number) => readonly number[],
): boolean {
  const [first, ...rest] = changesOf(model, top.here, score, ends);
  if (first === undefined) return false;
  const best = rest.reduce((one, other) => (other.value > one.value ? other : one), first);
  if (!(best.value > top.best)) return false;
  top.best = best.value;
  top.here[best.change.k] = best.change.end;
  return true;
}

/** Turns every input at once that helps by itself, if all together help. */
function turned(model: Model, top: Reached, score: Score, limits: Limits): boolean {
  const helping = changesOf(model, top.here, score, cornersOf(limits))
    .filter(({ value }) => value > top.best)
    .map(({ change }) => change);
  return helping.length > 0 && movedTo(model, top, score, [withChanges(top.here, helping)]);
}

/** Tries all corners of the inputs that matter most here, then all pairs of more of them. */
function mended(model: Model, top: Reached, score: Score, limits: Limits): boolean {
  const other = (k: number): number[] => {
    const [low, high] = limits[k]!;
    return low === high ? [] : [top.here[k] === low ? high : low];
  };
  const ranked = changesOf(model, top.here, score, other)
    .map(({ change, value }) => ({ change, by: Math.abs(value - top.best) }))
    .sort((one, two) => two.by - one.by);
  const few = ranked.slice(0, TOGETHER);
  const all = Array.from({ length: 2 ** few.length - 1 }, (_, mask) =>
    withChanges(
      top.here,
      few.filter((__, bit) => ((mask + 1) >> bit) % 2 === 1).map(({ change }) => change),
    ),
  );
  if (movedTo(model, top, score, all)) return true;
  const many = ranked.slice(0, PAIRED);
  const pairs = many.flatMap(({ change }, i) =>
    many.slice(0, i).map((two) => withChanges(top.here, [change, two.change])),
  );
  return movedTo(model, top, score, pairs);
}

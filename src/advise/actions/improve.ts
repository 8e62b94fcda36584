import type { Job } from '../../job/job.ts';
import { gainOf, type Estimate } from '../estimate.ts';
import { hurtsOf, type Hurt } from '../hurts.ts';
import { LEAST_GAIN } from '../numbers.ts';
import { figuresOf, type NeedOutcome, type Outcome } from '../outcome.ts';
import type { Bench, Variant } from '../variant.ts';
import { hasWaste } from '../dowel-places.ts';
import { workOf } from '../work.ts';
import { allWays } from '../ways/all-ways.ts';
import type { Step } from '../ways/compare.ts';
import { editsOfWay } from '../ways/edits-of-way.ts';
import type { Way } from '../ways/way.ts';
import { wayWords } from '../ways/words.ts';
import { action, type Action, type Case, type Target } from './action.ts';
import { allActions } from './all-actions.ts';
import { limitActions } from './part-actions.ts';
import { whyOf, type Why } from './why.ts';
import { bestSequence, type Sequence } from './sequence.ts';

/** An action as it comes out by itself. */
export interface Advice {
  readonly action: Action;
  /** With the changes that were needed so that it can be made. */
  readonly edits: Action['edits'];
  readonly job: Job;
  readonly outcome: Outcome;
  /** In the chance that all needs are met, over the job as it is, on the same blanks. */
  readonly gain: Estimate;
  readonly why: Why | null;
  /** Other ways of doing the same thing that gain a point or more too, the best first. */
  readonly instead: readonly Tried[];
}

export interface Tried {
  readonly action: Action;
  readonly gain: Estimate;
}

export interface Untold {
  readonly action: Action;
  readonly because: string;
}

export interface Improvement {
  readonly job: Job;
  readonly outcome: Outcome;
  readonly worst: NeedOutcome;
  readonly hurts: readonly Hurt[];
  /** Every need is met often enough: then nothing is advised. */
  readonly isGoodEnough: boolean;
  /** One thing at a time, what gains most first; of those that do the same thing only the best. */
  readonly singles: readonly Advice[];
  /** A change of what is asked for; null when it is met, or when no limit would do. */
  readonly limit: Advice | null;
  /** The best few things together; null when nothing gains. */
  readonly sequence: Sequence | null;
  /** Where single steps are not enough: a way of locating that does surely better. */
  readonly otherWay: Advice | null;
  /** Tried and not worth a word. */
  readonly noGain: readonly Action[];
  readonly notPossible: readonly Untold[];
}

export interface ImproveOptions {
  /** Trials with which sequences are sorted out. */
  readonly screenTrials: number;
}

/** More than these are not read. */
const MOST_SINGLES = 8;

/** What to do about a job, or to leave it alone; yields how far it is. */
export function* improve(
  bench: Bench,
  { screenTrials }: ImproveOptions,
): Generator<Step, Improvement> {
  const asIs = bench.tryOut([]);
  if (asIs.kind === 'impossible') throw new Error(asIs.because);
  const { job, outcome } = asIs;
  const worst = outcome.needs.reduce((a, b) => (b.chance.value < a.chance.value ? b : a));
  const hurts = hurtsOf(job, outcome.needs.indexOf(worst));
  const isGoodEnough = outcome.needs.every(({ chance }) => chance.value >= job.goodEnoughShare);
  const told = { job, outcome, worst, hurts, isGoodEnough };
  if (isGoodEnough)
    return {
      ...told,
      singles: [],
      limit: null,
      sequence: null,
      otherWay: null,
      noGain: [],
      notPossible: [],
    };
  const of: Case = { variants: bench.variants, job, outcome };
  const { tried, notPossible: refused } = yield* trySingles(bench, of);
  const notPossible = [...refused];
  const likelySteps = 2 * tried.length;
  let done = tried.length;
  const singles: Advice[] = [];
  const noGain: Action[] = [];
  for (const one of tried) {
    const { action, gain } = one;
    if (gain.value < LEAST_GAIN || gain.value < 2 * gain.se) {
      noGain.push(action);
      continue;
    }
    const at = singles.findIndex((other) => doesTheSame(other.action, action));
    if (at >= 0) {
      singles[at] = { ...singles[at]!, instead: [...singles[at]!.instead, one] };
      continue;
    }
    if (singles.length >= MOST_SINGLES) continue;
    yield { done: done++, all: likelySteps };
    const advice = adviceOf(bench, of, action, told);
    if (advice.kind === 'impossible') notPossible.push({ action, because: advice.because });
    // What had to be changed so that it can be made may cost what it gains.
    else if (advice.advice.gain.value < LEAST_GAIN) noGain.push(action);
    else singles.push(advice.advice);
  }
  const candidates = tried.map(({ action: one, gain }) => standing(bench, one, gain));
  const sequence = yield* bestSequence(bench, of, candidates, screenTrials);
  const otherWay =
    sequence?.isGoodEnough === true
      ? null
      : yield* bestOtherWay(bench, of, told, screenTrials, sequence?.outcome ?? outcome);
  return {
    ...told,
    singles: singles.toSorted((a, b) => byGain(a, b)),
    limit: limitAfter(bench, of, told, sequence),
    sequence,
    otherWay,
    noGain,
    notPossible,
  };
}

/** Every action by itself: what it gains, the most first, or why it cannot be. */
export function* trySingles(
  bench: Bench,
  of: Case,
): Generator<Step, { readonly tried: readonly Tried[]; readonly notPossible: readonly Untold[] }> {
  const actions = allActions(of);
  const tried: Tried[] = [];
  const notPossible: Untold[] = [];
  for (const [k, one] of actions.entries()) {
    yield { done: k, all: 2 * actions.length };
    const variant = bench.tryOut(one.edits, one.dialledTurns);
    if (variant.kind === 'impossible') notPossible.push({ action: one, because: variant.because });
    else tried.push({ action: one, gain: gainOf(of.outcome.eachAll, variant.outcome.eachAll) });
  }
  return { tried: tried.toSorted(byGain), notPossible };
}

/** What can gain, or moves a touch or the blank, with the changes that it needs so that it can be made. */
function standing(bench: Bench, one: Action, gain: Estimate): Action {
  const isMoved = one.targets.some((target) => MOVING.includes(target));
  if (one.dialledTurns > 0 || (gain.value < LEAST_GAIN && !isMoved)) return one;
  const variant = bench.tryAndMake(one.edits);
  return variant.kind === 'possible' ? { ...one, edits: variant.edits } : one;
}

const MOVING: readonly Target[] = ['zero', 'where zero is touched', 'locating', 'turn'];

/** Ways that are asked for a making, the best first. */
const WAYS_ASKED = 6;

/** The best way of locating altogether, when it does surely better than all of the single steps. */
function* bestOtherWay(
  bench: Bench,
  of: Case,
  told: Pick<Improvement, 'worst' | 'hurts'>,
  screenTrials: number,
  reached: Outcome,
): Generator<Step, Advice | null> {
  const screen = bench.withLuck({ ...bench.luck, trials: screenTrials });
  const ways = allWays(of.job);
  const found: { readonly way: Way; readonly edits: Action['edits']; readonly score: number }[] =
    [];
  for (const way of ways) {
    yield { done: found.length, all: ways.length };
    const edits = editsOfWay(bench.variants, way);
    // Holes that stay in the part are for compare to show, not for advice.
    const isBored = way.located.kind === 'dowels' || way.located.kind === 'fence-and-dowel';
    if ('because' in edits || (isBored && !hasWaste(of.job))) continue;
    const variant = screen.tryOut(edits);
    if (variant.kind === 'possible') found.push({ way, edits, score: variant.outcome.all.value });
  }
  for (const { way, edits } of found.toSorted((a, b) => b.score - a.score).slice(0, WAYS_ASKED)) {
    const one = action('another way', wayWords(way), ['locating'], 0, edits);
    const advice = adviceOf(bench, of, one, told);
    if (advice.kind === 'impossible') continue;
    const { outcome, job } = advice.advice;
    const more = gainOf(reached.eachAll, outcome.eachAll);
    if (more.value < LEAST_GAIN || more.value < 2 * more.se) return null;
    return { ...advice.advice, action: { ...one, minutes: workOf(job).minutes } };
  }
  return null;
}

/** What gains more first; of equals what takes fewer minutes. */
const byGain = (a: Tried, b: Tried): number =>
  b.gain.value - a.gain.value || a.action.minutes - b.action.minutes;

/** Two ways of doing one thing. */
const doesTheSame = (one: Action, other: Action): boolean => one.targets[0] === other.targets[0];

type Found =
  | { readonly kind: 'possible'; readonly advice: Advice }
  | { readonly kind: 'impossible'; readonly because: string };

function adviceOf(
  bench: Bench,
  { job, outcome }: Case,
  action: Action,
  { worst, hurts }: Pick<Improvement, 'worst' | 'hurts'>,
): Found {
  const variant: Variant = bench.tryAndMake(action.edits, action.dialledTurns);
  if (variant.kind === 'impossible') return { kind: 'impossible', because: variant.because };
  return {
    kind: 'possible',
    advice: {
      action,
      edits: variant.edits,
      job: variant.job,
      outcome: variant.outcome,
      gain: gainOf(outcome.eachAll, variant.outcome.eachAll),
      why: whyOf(bench, job, action, variant.job, outcome.needs.indexOf(worst), hurts),
      instead: [],
    },
  };
}

/** Where all of the work is not enough: the limit of the worst need that would be met. */
function limitAfter(
  bench: Bench,
  of: Case,
  told: Pick<Improvement, 'worst' | 'hurts'>,
  sequence: Sequence | null,
): Advice | null {
  if (sequence?.isGoodEnough === true) return null;
  const { job, outcome, edits } = sequence ?? { ...of, edits: [] };
  const there: Case = { variants: bench.variants, job, outcome };
  const [limit] = limitActions(there, figuresOf(job, bench.luck));
  if (limit === undefined) return null;
  const found = adviceOf(bench, of, { ...limit, edits: [...edits, ...limit.edits] }, told);
  return found.kind === 'possible' ? found.advice : null;
}

import type { Edit } from '../../job/edit.ts';
import type { Job } from '../../job/job.ts';
import { gainOf, type Estimate } from '../estimate.ts';
import { LEAST_GAIN } from '../numbers.ts';
import type { Outcome } from '../outcome.ts';
import type { Bench } from '../variant.ts';
import type { Step } from '../ways/compare.ts';
import { editsTogether, goTogether, turnsTogether, type Action, type Case } from './action.ts';

/** A few actions one after the other, and what they come to. */
export interface Sequence {
  /** Each with the chance of all needs once it is done after those before it, and what it adds. */
  readonly steps: readonly {
    readonly action: Action;
    readonly all: Estimate;
    readonly adds: Estimate;
  }[];
  readonly edits: readonly Edit[];
  readonly job: Job;
  readonly outcome: Outcome;
  readonly gain: Estimate;
  readonly minutes: number;
  readonly isGoodEnough: boolean;
}

const MOST_STEPS = 3;
/** Pairs from which triples are made, and sequences that are tried with all trials. */
const [KEPT_PAIRS, TRIED_OUT] = [10, 8] as const;

interface Candidate {
  readonly actions: readonly Action[];
  readonly score: number;
  /** Need by need: high only when every one comes near. */
  readonly nearness: number;
  readonly isGoodEnough: boolean;
  readonly minutes: number;
}

/**
 * The best of up to three actions, over all pairs and over triples from the best pairs: good enough in the fewest minutes, or, if
 * nothing is, as good as can be. Steps that add less than a point to the others are left out.
 */
export function* bestSequence(
  bench: Bench,
  of: Case,
  actions: readonly Action[],
  screenTrials: number,
): Generator<Step, Sequence | null> {
  const screen = bench.withLuck({ ...bench.luck, trials: screenTrials });
  const pairs = actions.flatMap((one, i) =>
    actions.slice(i + 1).flatMap((other) => (goTogether(one, other) ? [[one, other]] : [])),
  );
  let done = 0;
  const all = actions.length + pairs.length + KEPT_PAIRS * actions.length;
  const found: Candidate[] = [];
  const consider = function* (some: readonly Action[]): Generator<Step, void> {
    yield { done: done++, all };
    const candidate = candidateOf(screen, of, some);
    if (candidate !== null) found.push(candidate);
  };
  for (const one of actions) yield* consider([one]);
  for (const pair of pairs) yield* consider(pair);
  const best = found
    .filter((one) => one.actions.length === 2)
    .toSorted(better)
    .slice(0, KEPT_PAIRS);
  const seen = new Set<string>();
  for (const { actions: pair } of best)
    for (const third of actions) {
      if (pair.some((one) => one === third || !goTogether(one, third))) continue;
      const triple = actions.filter((one) => one === third || pair.includes(one));
      const key = triple.map(({ name }) => name).join();
      if (triple.length > MOST_STEPS || seen.has(key)) continue;
      seen.add(key);
      yield* consider(triple);
    }
  return decided(bench, of, found.toSorted(better).slice(0, TRIED_OUT), found);
}

function candidateOf(bench: Bench, { job }: Case, actions: readonly Action[]): Candidate | null {
  const variant = bench.tryOut(editsTogether(actions), turnsTogether(actions));
  if (variant.kind === 'impossible') return null;
  const { all, needs } = variant.outcome;
  return {
    actions,
    score: all.value,
    nearness: needs.reduce((sum, { chance }) => sum + Math.log(chance.value + 0.01), 0),
    isGoodEnough: needs.every(({ chance }) => chance.value >= job.goodEnoughShare),
    minutes: minutesOf(actions),
  };
}

const minutesOf = (actions: readonly Action[]): number =>
  actions.reduce((sum, { minutes }) => sum + minutes, 0);

/** Good enough before not; of those the one that is done sooner; else the better one. */
function better(a: Candidate, b: Candidate): number {
  if (a.isGoodEnough !== b.isGoodEnough) return a.isGoodEnough ? -1 : 1;
  if (a.isGoodEnough)
    return a.minutes - b.minutes || a.actions.length - b.actions.length || b.score - a.score;
  const off = b.score - a.score;
  return Math.abs(off) > LEAST_GAIN ? off : b.nearness - a.nearness || a.minutes - b.minutes;
}

/** The best that can be made, with all trials, without what adds nothing. */
function decided(
  bench: Bench,
  of: Case,
  candidates: readonly Candidate[],
  all: readonly Candidate[],
): Sequence | null {
  const whole = [...candidates, ...spread(all)].flatMap(({ actions }) => {
    const one = lean(bench, of, actions);
    return one === null ? [] : [one];
  });
  const [best] = whole.toSorted(betterSequence);
  return best === undefined || best.gain.value < LEAST_GAIN || best.gain.value < 2 * best.gain.se
    ? null
    : best;
}

/** The best single actions too: with all trials one may do. */
const spread = (all: readonly Candidate[]): readonly Candidate[] =>
  all
    .filter(({ actions }) => actions.length === 1)
    .toSorted(better)
    .slice(0, 3);

function betterSequence(a: Sequence, b: Sequence): number {
  if (a.isGoodEnough !== b.isGoodEnough) return a.isGoodEnough ? -1 : 1;
  if (a.isGoodEnough) return a.minutes - b.minutes || a.steps.length - b.steps.length;
  const off = b.outcome.all.value - a.outcome.all.value;
  return Math.abs(off) > LEAST_GAIN ? off : a.minutes - b.minutes;
}

/** Takes out what adds less than a point to the rest, then puts what adds most first. */
function lean(bench: Bench, of: Case, actions: readonly Action[]): Sequence | null {
  let kept = actions;
  for (;;) {
    const whole = made(bench, kept);
    if (whole === null) return null;
    const idle = kept.find((one) => {
      const rest = made(
        bench,
        kept.filter((other) => other !== one),
      );
      return rest !== null && kept.length > 1 && addsNothing(of, rest.outcome, whole.outcome);
    });
    if (idle === undefined) return ordered(bench, of, kept, whole);
    kept = kept.filter((one) => one !== idle);
  }
}

/** Less than a point, and nothing that makes good enough of what was not. */
function addsNothing({ job }: Case, without: Outcome, with_: Outcome): boolean {
  const isGood = ({ needs }: Outcome): boolean =>
    needs.every(({ chance }) => chance.value >= job.goodEnoughShare);
  if (isGood(with_) && !isGood(without)) return false;
  return gainOf(without.eachAll, with_.eachAll).value < LEAST_GAIN;
}

type Possible = Extract<ReturnType<Bench['tryOut']>, { kind: 'possible' }>;

function made(bench: Bench, actions: readonly Action[]): Possible | null {
  const variant = bench.tryAndMake(editsTogether(actions), turnsTogether(actions));
  return variant.kind === 'possible' ? variant : null;
}

function ordered(
  bench: Bench,
  { job, outcome }: Case,
  actions: readonly Action[],
  whole: Possible,
): Sequence {
  const steps: Sequence['steps'][number][] = [];
  let [left, before] = [actions, outcome];
  while (left.length > 0) {
    const doneBefore = steps.map(({ action }) => action);
    const next = left
      .map((action) => ({ action, after: comesTo(bench, [...doneBefore, action]) ?? before }))
      .reduce((a, b) => (b.after.all.value > a.after.all.value ? b : a));
    const after = left.length === 1 ? whole.outcome : next.after;
    steps.push({
      action: next.action,
      all: after.all,
      adds: gainOf(before.eachAll, after.eachAll),
    });
    before = after;
    left = left.filter((one) => one !== next.action);
  }
  return {
    steps,
    edits: whole.edits,
    job: whole.job,
    outcome: whole.outcome,
    gain: gainOf(outcome.eachAll, whole.outcome.eachAll),
    minutes: minutesOf(actions),
    isGoodEnough: whole.outcome.needs.every(({ chance }) => chance.value >= job.goodEnoughShare),
  };
}

const comesTo = (bench: Bench, actions: readonly Action[]): Outcome | null =>
  made(bench, actions)?.outcome ?? null;

import type { Job } from '../../job/job.ts';
import type { Distribution } from '../../num/distribution.ts';
import { misfitModel } from '../../setup/misfit.ts';
import { sourcesOf } from '../../sources/sources-of.ts';
import type { Estimate } from '../estimate.ts';
import type { Luck } from '../outcome.ts';
import type { Step } from '../ways/compare.ts';
import { groupsOf, type Group } from './groups.ts';
import { scaledAbout } from './scaled.ts';
import { toldScale } from './told-size.ts';
import { yieldsOf, type Scales, type Wish, type Yield, type Yields } from './yields.ts';

/** How large one thing may be, the others as they are. */
export interface Allowed {
  readonly group: Group;
  readonly verdict:
    /** So many times as large as it is, told a little smaller than it was found, in round figures. */
    | {
        readonly kind: 'up to';
        readonly by: number;
        /** Of the first source of the group. */
        readonly distribution: Distribution;
        /** How sure `by` is: what the luck of the trials and the halving leave open. */
        readonly sure: number;
      }
    /** Still met at the largest that was tried, so many times as large. */
    | { readonly kind: 'any'; readonly upTo: number }
    /** Not met even without it: what would be reached. */
    | { readonly kind: 'not enough'; readonly without: Yield };
}

export interface Allowance {
  readonly job: Job;
  readonly wish: Wish;
  readonly asIs: Yield;
  readonly each: readonly Allowed[];
  /** Every spread that has a size so many times as large; null when not even without all of them. */
  readonly together: { readonly by: number; readonly sure: number } | null;
  /** Chance that all blanks of the job's batch are good as it is, with what it would be if they were strangers; null for one blank. */
  readonly batch: {
    readonly partCount: number;
    readonly allGood: Estimate;
    readonly onePart: Estimate;
  } | null;
}

/** As many times as large is the most that is tried. */
export const MOST = 10;
/** Halving ends when the two ends differ by this share. */
const CLOSE = 0.01;
const [UPWARDS, DOWNWARDS] = [
  [2, 4],
  [0.5, 0.25, 0.1, 0.02],
] as const;

/** The largest spread of each thing that still meets the wish, by halving on the same blanks. Yields after each thing. */
export function* allowances(job: Job, luck: Luck, wish: Wish): Generator<Step, Allowance> {
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  const yields = yieldsOf(misfit, sources, luck, wish);
  const groups = groupsOf(job, sources);
  const all = groups.length + 2;
  const asIs = yields(NOTHING, 'all tried');
  const each: Allowed[] = [];
  for (const group of groups) {
    yield { done: each.length, all };
    each.push(allowedOf(yields, asIs, group, wish));
  }
  yield { done: groups.length, all };
  const everything = groups.flatMap((group) => group.sources.map(({ id }) => id));
  const together = largest(yields, asIs, everything, wish);
  yield { done: groups.length + 1, all };
  return {
    job,
    wish,
    asIs,
    each,
    together:
      together.kind === 'none'
        ? null
        : together.kind === 'any'
          ? { by: MOST, sure: 0 }
          : { by: together.by, sure: together.sure },
    batch: batchOf(job, luck),
  };
}

const NOTHING: Scales = new Map();

function allowedOf(yields: Yields, asIs: Yield, group: Group, wish: Wish): Allowed {
  const ids = group.sources.map(({ id }) => id);
  const found = largest(yields, asIs, ids, wish);
  switch (found.kind) {
    case 'any':
      return { group, verdict: { kind: 'any', upTo: MOST } };
    case 'none':
      return { group, verdict: { kind: 'not enough', without: found.without } };
    case 'up to': {
      const [source] = group.sources;
      const by = toldScale(source!, found.by);
      return {
        group,
        verdict: {
          kind: 'up to',
          by,
          distribution: scaledAbout(source!.distribution, by),
          sure: found.sure,
        },
      };
    }
  }
}

type Largest =
  | { readonly kind: 'any' }
  | { readonly kind: 'none'; readonly without: Yield }
  | { readonly kind: 'up to'; readonly by: number; readonly sure: number };

/** How many times as large sources may be together; what is met smaller is taken to be met when smaller still. */
function largest(yields: Yields, asIs: Yield, ids: readonly string[], wish: Wish): Largest {
  const at = (by: number): Scales => new Map(ids.map((id) => [id, by]));
  const isMet = (by: number): boolean => yields(at(by), 'clear').isMet;
  // The ends first: most things do not matter, and then one look tells.
  if (asIs.isMet && isMet(MOST)) return { kind: 'any' };
  if (!asIs.isMet && !isMet(0)) return { kind: 'none', without: yields(at(0), 'some tried') };
  let [met, missed] = asIs.isMet ? [1, MOST] : [0, 1];
  for (const by of asIs.isMet ? UPWARDS : DOWNWARDS) {
    const isHere = isMet(by);
    if (isHere) met = by;
    else missed = by;
    // Downwards the first that is met ends it, upwards the first that is missed.
    if (isHere !== asIs.isMet) break;
  }
  while (missed - met > CLOSE * missed) {
    const middle = (met + missed) / 2;
    if (isMet(middle)) met = middle;
    else missed = middle;
  }
  return { kind: 'up to', by: met, sure: surenessAt(yields, at, met, wish) };
}

/** The standard error of the chance over how fast the chance falls there, and what halving left. */
function surenessAt(yields: Yields, at: (by: number) => Scales, by: number, wish: Wish): number {
  const [less, more] = [0.9 * by, 1.1 * by].map((one) => yields(at(one), 'all tried').chance.value);
  const { se } = yields(at(by), 'all tried').chance;
  const fall = (less! - more!) / (0.2 * by);
  const luck = fall > 0 ? se / fall : wish.share * by;
  return Math.hypot(luck, (CLOSE * by) / 2);
}

/** Fewer batches than blanks: each is a whole batch. */
function batchOf(job: Job, luck: Luck): Allowance['batch'] {
  const { count: partCount } = job.parts;
  if (partCount === 1) return null;
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  const of = (count: number): Estimate =>
    yieldsOf(misfit, sources, luck, { kind: 'all-of', partCount: count, share: 0 })(
      NOTHING,
      'all tried',
    ).chance;
  return { partCount, allGood: of(partCount), onePart: of(1) };
}

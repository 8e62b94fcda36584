import type { Edit } from '../../job/edit.ts';
import type { Job } from '../../job/job.ts';
import type { Estimate } from '../estimate.ts';
import { gainOf } from '../estimate.ts';
import { hurtsOf, type Hurt } from '../hurts.ts';
import type { Outcome } from '../outcome.ts';
import { depthCounts } from '../../job/what-counts.ts';
import type { Bench } from '../variant.ts';
import { workOf, type Work } from '../work.ts';
import { heightEdits, HEIGHT_WAYS, heightWayOf, type HeightWay } from './heights.ts';
import { allWays } from './all-ways.ts';
import { editsOfWay } from './edits-of-way.ts';
import { familyOf, stepsBetween, wayKey, wayOf, type Way } from './way.ts';

/** One way, as it comes out. */
export interface Row {
  readonly way: Way;
  readonly heights: HeightWay;
  /** What to change in the job file; nothing for the job as it is written. */
  readonly edits: readonly Edit[];
  readonly job: Job;
  readonly outcome: Outcome;
  /** Gain in the chance that all needs are met, over the job as it is written. */
  readonly gain: Estimate;
  readonly work: Work;
  readonly isAsWritten: boolean;
  /** The least likely need, and what its spread comes from, the worst first. */
  readonly worst: {
    readonly need: string;
    readonly chance: Estimate;
    readonly hurts: readonly Hurt[];
  };
}

/** A way that cannot be, and why. */
export interface Refused {
  readonly way: Way;
  readonly because: string;
}

export interface Comparison {
  /** The job as it is written. */
  readonly asWritten: Row;
  /** The best of each family, the job as it is written and its neighbours; the best first. */
  readonly rows: readonly Row[];
  readonly refused: readonly Refused[];
  /** How many ways were tried in all. */
  readonly tried: number;
}

/** How far a comparison is: so many of so many. */
export interface Step {
  readonly done: number;
  readonly all: number;
}

export interface CompareOptions {
  /** Trials with which ways are sorted out before the best are tried with the bench's own. */
  readonly screenTrials: number;
  readonly which: 'best' | 'all';
}

/** Rows of one family that can be made; more than this many refusals and its next best is not asked for. */
const MOST_ASKED = 4;
/** Ways that differ from the job in one respect are shown too. */
const NEIGHBOUR = 1;

/**
 * Every way of locating on the same draws; yields how far it is. The bench's obstacle is asked only of what is shown.
 */
export function* compareWays(
  bench: Bench,
  { screenTrials, which }: CompareOptions,
): Generator<Step, Comparison> {
  const { job } = bench.variants.whole;
  const asIs = wayOf(job);
  const ways = allWays(job).filter((way) => wayKey(way) !== wayKey(asIs));
  const all = ways.length + SHOWN_LIKELY;
  const screen = bench.withLuck({ ...bench.luck, trials: screenTrials });
  const refused: Refused[] = [];
  const candidates: Candidate[] = [];
  let done = 0;
  for (const way of ways) {
    yield { done: done++, all };
    const edits = editsOfWay(bench.variants, way);
    if ('because' in edits) {
      refused.push({ way, because: edits.because });
      continue;
    }
    const variant = screen.tryOut(edits);
    if (variant.kind === 'impossible') refused.push({ way, because: variant.because });
    else candidates.push({ way, edits, score: variant.outcome.all.value });
  }
  const asWritten = yield* rowOf(
    bench,
    screen,
    { way: asIs, edits: [], score: 0 },
    null,
    'as written',
  );
  if (asWritten.kind === 'refused') throw new Error(asWritten.because);
  const rows: Row[] = [asWritten.row];
  for (const group of groupsOf(candidates, asIs, which)) {
    let asked = 0;
    for (const candidate of group) {
      if (asked++ >= MOST_ASKED) break;
      yield { done: Math.min(done++, all), all };
      const made = yield* rowOf(bench, screen, candidate, asWritten.row, 'best heights');
      if (made.kind === 'refused') {
        refused.push({ way: candidate.way, because: made.because });
        continue;
      }
      rows.push(made.row);
      break;
    }
  }
  return {
    asWritten: asWritten.row,
    rows: rows.toSorted(
      (a, b) => b.outcome.all.value - a.outcome.all.value || a.work.minutes - b.work.minutes,
    ),
    refused,
    tried: ways.length + 1,
  };
}

const SHOWN_LIKELY = 16;

interface Candidate {
  readonly way: Way;
  readonly edits: readonly Edit[];
  readonly score: number;
}

/** Candidates of which one is to be shown each, the best first. */
function groupsOf(
  candidates: readonly Candidate[],
  asIs: Way,
  which: CompareOptions['which'],
): readonly (readonly Candidate[])[] {
  if (which === 'all') return candidates.map((one) => [one]);
  const neighbours = candidates.filter(({ way }) => stepsBetween(way, asIs) <= NEIGHBOUR);
  const shown = new Set(neighbours);
  const families = new Map<string, Candidate[]>();
  for (const one of candidates.toSorted((a, b) => b.score - a.score)) {
    const family = families.get(familyOf(one.way)) ?? [];
    family.push(one);
    families.set(familyOf(one.way), family);
  }
  return [
    ...neighbours.map((one) => [one]),
    ...[...families.values()].filter(([best]) => !shown.has(best!)),
  ];
}

type Made =
  | { readonly kind: 'row'; readonly row: Row }
  | { readonly kind: 'refused'; readonly because: string };

function* rowOf(
  bench: Bench,
  screen: Bench,
  { way, edits }: Candidate,
  asWritten: Row | null,
  heights: 'as written' | 'best heights',
): Generator<Step, Made> {
  const { job } = bench.variants.whole;
  const chosen =
    heights === 'as written' || !depthCounts(job)
      ? edits
      : [...edits, ...bestHeights(screen, edits)];
  const found = heights === 'as written' ? bench.tryOut(chosen) : bench.tryAndMake(chosen);
  if (found.kind === 'impossible') return { kind: 'refused', because: found.because };
  const { outcome } = found;
  const worst = outcome.needs.reduce((a, b) => (b.chance.value < a.chance.value ? b : a));
  const index = outcome.needs.indexOf(worst);
  return {
    kind: 'row',
    row: {
      way,
      heights: heightWayOf(found.job),
      edits: found.edits,
      job: found.job,
      outcome,
      gain: gainOf(asWritten?.outcome.eachAll ?? outcome.eachAll, outcome.eachAll),
      work: workOf(found.job),
      isAsWritten: asWritten === null,
      worst: { need: worst.name, chance: worst.chance, hurts: hurtsOf(found.job, index) },
    },
  };
}

/** Of top and bed in both placings, what does best with a way. */
function bestHeights(screen: Bench, edits: readonly Edit[]): readonly Edit[] {
  // What the job says comes first: ties go to it.
  const now = heightWayOf(screen.variants.whole.job);
  const tried = [now, ...HEIGHT_WAYS].map((one) => {
    const more = heightEdits(screen.variants, one);
    const variant = screen.tryOut([...edits, ...more]);
    return { more, score: variant.kind === 'possible' ? variant.outcome.all.value : -1 };
  });
  return tried.reduce((a, b) => (b.score > a.score ? b : a)).more;
}

import type { Edit } from '../../job/edit.ts';
import type { Job } from '../../job/job.ts';
import { gainOf, type Estimate } from '../estimate.ts';
import { LEAST_GAIN } from '../numbers.ts';
import { tried, type Outcome } from '../outcome.ts';
import type { Bench, Variant } from '../variant.ts';
import type { Step } from '../ways/compare.ts';
import type { Way } from '../ways/way.ts';
import type { Places } from './dial.ts';
import { framesOf, type Frame } from './frames.ts';
import { byScore, judgeOf, type Judge, type Score } from './judge.ts';
import { missOf, type Miss } from './miss.ts';
import { placesOf } from './places.ts';
import { searchPlaces, type Found } from './search.ts';

/** A job with its places as they are somewhere, and how it comes out. */
export interface Placing {
  readonly job: Job;
  readonly edits: readonly Edit[];
  readonly outcome: Outcome;
}

export interface Placed {
  readonly asWritten: Placing;
  /** Why the job as it is written cannot be made; null when it can. */
  readonly hindrance: string | null;
  /** The same locating with its places where most people would put them, or why they cannot stand there. */
  readonly plain: Variant;
  readonly advice: PlaceAdvice;
  /** Places that were looked at. */
  readonly looked: number;
}

export type PlaceAdvice =
  /** Nothing of this way of locating has a place, as a nest. */
  | { readonly kind: 'no places' }
  /** Nothing that was found is worth moving a stop for; `found` is the best there was, null when nothing was better. */
  | { readonly kind: 'leave it'; readonly found: Better | null }
  | { readonly kind: 'move'; readonly found: Better };

export interface Better extends Placing {
  readonly moved: readonly Moved[];
  /** Other corner, fence or turn than the job's; null when those stay. */
  readonly way: Way | null;
  /** In the chance that all needs are met: over the job as it is written, and over the plain places. */
  readonly gain: Estimate;
  readonly gainOverPlain: Estimate | null;
  /** When no blank is good either way: what it gains all the same. */
  readonly miss: Miss | null;
}

/** A dial that is to be set elsewhere, mm. */
export interface Moved {
  readonly words: string;
  readonly from: number;
  readonly to: number;
}

export interface PlaceOptions {
  /** Blanks that places are searched with; the bench's own tell what was gained. */
  readonly searchTrials: number;
}

/** How many looks it is likely to take, for somebody who waits. */
const LIKELY_LOOKS = 600;

/** Luck of the search, and of choosing between what it found: others than those that tell the gain. */
const [SEARCH_LUCK, CHOICE_LUCK] = [104_729, 1_299_709] as const;
/** Other frames whose places are searched too. */
const MOST_FRAMES = 2;
/** A gain is told when it is beyond this many standard errors. */
const SURE = 2;
/** Chances beyond these count as never and as always. */
const [NEVER, ALWAYS] = [0.001, 0.999] as const;

/** The best places for a job's needs, found on one luck and told on another. Yields after each look. */
export function* placeWell(bench: Bench, { searchTrials }: PlaceOptions): Generator<Step, Placed> {
  const { luck } = bench;
  const written = bench.tryOut([]);
  if (written.kind === 'impossible') throw new Error(written.because);
  const asWritten = placingOf(written);
  const own = placesOf(asWritten.job);
  const made = bench.tryAndMake([]);
  const hindrance = made.kind === 'impossible' ? made.because : null;
  if (own === null)
    return { asWritten, hindrance, plain: written, looked: 0, advice: { kind: 'no places' } };
  const plain = plainOf(bench, own);
  // No place can gain more than what is missing.
  if (hindrance === null && asWritten.outcome.all.value > 1 - LEAST_GAIN)
    return { asWritten, hindrance, plain, looked: 0, advice: { kind: 'leave it', found: null } };
  const search = searchOf(bench, judgeOf((luck.seed + SEARCH_LUCK) >>> 0, searchTrials));
  const found: Candidate[] = [];
  for (const frame of yield* framesToSearch(bench, search)) {
    const best = yield* inFrame(search, frame);
    if (best !== null) found.push({ ...best, frame });
  }
  const chosen = chosenOf(bench, asWritten, found);
  const better = chosen === null ? null : betterOf(bench, asWritten, plain, chosen);
  return {
    asWritten,
    hindrance,
    plain,
    looked: search.looked(),
    advice:
      better === null
        ? { kind: 'leave it', found: null }
        : isWorthIt(asWritten, better)
          ? { kind: 'move', found: better }
          : { kind: 'leave it', found: better },
  };
}

const placingOf = ({ job, edits, outcome }: Extract<Variant, { kind: 'possible' }>): Placing => ({
  job,
  edits,
  outcome,
});

const plainOf = (bench: Bench, { dials, editsAt }: Places): Variant =>
  bench.tryAndMake(editsAt(dials.map(({ plain }) => plain)));

interface Candidate {
  readonly frame: Searched;
  readonly at: readonly number[];
  readonly edits: readonly Edit[];
}

/** A frame whose places can be moved. */
interface Searched extends Frame {
  readonly places: Places;
  readonly isOwn: boolean;
}

interface Search {
  readonly bench: Bench;
  /** One blank: only whether it reads and can be made. */
  readonly making: Bench;
  readonly judge: Judge;
  readonly looked: () => number;
}

function searchOf(bench: Bench, judge: Judge): Search {
  let looks = 0;
  return {
    bench,
    making: bench.withLuck({ ...bench.luck, trials: 1 }),
    judge: (job, against) => {
      looks += 1;
      return judge(job, against);
    },
    looked: () => looks,
  };
}

/** The job's own frame, and the others that do best with plain places. */
function* framesToSearch(bench: Bench, search: Search): Generator<Step, readonly Searched[]> {
  const [own, ...others] = framesOf(bench.variants).flatMap((frame, k): readonly Searched[] => {
    const read = bench.variants.read(frame.edits);
    const places = read.ok ? placesOf(read.value.job) : null;
    return places === null ? [] : [{ ...frame, places, isOwn: k === 0 }];
  });
  const scored: { readonly frame: Searched; readonly score: Score }[] = [];
  for (const frame of others) {
    yield stepOf(search);
    const { dials, jobAt } = frame.places;
    const job = jobAt(dials.map(({ now }) => now));
    const score = job === null ? null : search.judge(job, null);
    if (score !== null) scored.push({ frame, score });
  }
  const best = scored.toSorted((a, b) => byScore(a.score, b.score)).slice(0, MOST_FRAMES);
  return [own!, ...best.map(({ frame }) => frame)];
}

function* inFrame(
  search: Search,
  frame: Searched,
): Generator<Step, Omit<Candidate, 'frame'> | null> {
  const { dials, jobAt, editsAt } = frame.places;
  const editsFor = (at: readonly number[]): readonly Edit[] => [...frame.edits, ...editsAt(at)];
  const run = searchPlaces({
    dials,
    score: (at, against) => {
      const job = jobAt(at);
      return job === null ? null : search.judge(job, against);
    },
    admits: (at) => search.making.tryAndMake(editsFor(at)).kind === 'possible',
    starts: [dials.map(({ now }) => now), dials.map(({ plain }) => plain)],
    grid: frame.isOwn ? 'grid' : 'none',
  });
  const best = yield* withLooks(run, search);
  if (best === null) return null;
  const at = onlyNeeded(search, frame.places, best);
  return { at, edits: editsFor(at) };
}

function stepOf({ looked }: Search): Step {
  const done = looked();
  return { done, all: Math.max(done, LIKELY_LOOKS) };
}

function* withLooks<T>(run: Generator<void, T>, search: Search): Generator<Step, T> {
  for (;;) {
    const next = run.next();
    if (next.done === true) return next.value;
    yield stepOf(search);
  }
}

/** Dials that move without a gain that can be told from luck go back to where they are. */
function onlyNeeded(search: Search, { dials, jobAt, editsAt }: Places, best: Found) {
  let [at, score] = [best.at, best.score];
  for (const edit of editsAt(best.at)) {
    const back = dials.map(({ now }, k) => {
      const alone = editsAt(dials.map((dial, j) => (j === k ? at[j]! : dial.now)));
      const isHis = alone.some(({ path }) => path.join() === edit.path.join());
      return isHis ? now : at[k]!;
    });
    const job = jobAt(back);
    const without = job === null ? null : search.judge(job, null);
    if (without === null || !isAsGood(without, score)) continue;
    [at, score] = [back, without];
  }
  return at;
}

function isAsGood(without: Score, score: Score): boolean {
  if (without.chance === score.chance) return without.margin > 0.98 * score.margin - 1e-9;
  const loss = gainOf(without.each, score.each);
  return loss.value < Math.max(LEAST_GAIN / 5, loss.se);
}

/** The best on a luck that none of them was found with; another frame only when it is surely better. */
function chosenOf(bench: Bench, asWritten: Placing, found: readonly Candidate[]): Candidate | null {
  const { seed, trials } = bench.luck;
  const luck = { seed: (seed + CHOICE_LUCK) >>> 0, trials };
  const choice = bench.withLuck(luck);
  let best: { readonly candidate: Candidate | null; readonly job: Job; readonly outcome: Outcome } =
    {
      candidate: null,
      job: asWritten.job,
      outcome: tried(asWritten.job, luck)!,
    };
  for (const candidate of found) {
    if (candidate.edits.length === 0) continue;
    const variant = choice.tryAndMake(candidate.edits);
    if (variant.kind === 'impossible') continue;
    const gain = gainOf(best.outcome.eachAll, variant.outcome.eachAll);
    const isNever = best.outcome.all.value < NEVER && variant.outcome.all.value < NEVER;
    const isBetter = isNever
      ? isNearer(missOf(best.job, variant.job, luck))
      : gain.value > (candidate.frame.isOwn ? 0 : Math.max(LEAST_GAIN, SURE * gain.se));
    if (isBetter) best = { candidate, job: variant.job, outcome: variant.outcome };
  }
  return best.candidate;
}

const isNearer = (miss: Miss | null): boolean =>
  miss !== null && miss.nearer.value > SURE * miss.nearer.se;

function betterOf(
  bench: Bench,
  asWritten: Placing,
  plain: Variant,
  { frame, at, edits }: Candidate,
): Better | null {
  const variant = bench.tryAndMake(edits);
  if (variant.kind === 'impossible') return null;
  const { job, outcome } = variant;
  const gain = gainOf(asWritten.outcome.eachAll, outcome.eachAll);
  const isNever = asWritten.outcome.all.value < NEVER && outcome.all.value < NEVER;
  const miss = isNever ? missOf(asWritten.job, job, bench.luck) : null;
  // What helped on other lucks and does not on this one is none.
  if (isNever ? !isNearer(miss) : gain.value <= 0) return null;
  return {
    job,
    edits: variant.edits,
    outcome,
    moved: frame.places.dials.flatMap(({ words, now }, k) =>
      now === at[k]! ? [] : [{ words, from: now, to: at[k]! }],
    ),
    way: frame.isOwn ? null : frame.way,
    gain,
    gainOverPlain:
      plain.kind === 'impossible' ? null : gainOf(plain.outcome.eachAll, outcome.eachAll),
    miss,
  };
}

/** A point at least and beyond luck; or, where every blank is bad, surely nearer; nothing where every blank is good. */
function isWorthIt({ outcome }: Placing, { gain, miss }: Better): boolean {
  if (miss !== null) return miss.nearer.value > MISS_WORTH * Math.abs(miss.before);
  if (outcome.all.value > ALWAYS) return false;
  return gain.value >= LEAST_GAIN && gain.value > SURE * gain.se;
}

/** A miss that shrinks by less than this share of itself is not worth moving a stop for. */
const MISS_WORTH = 0.05;

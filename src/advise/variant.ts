import type { Fault } from '../job/fault.ts';
import type { Edit } from '../job/edit.ts';
import type { Job } from '../job/job.ts';
import type { Variants } from '../job/variants.ts';
import { AS_IT_IS, tried, type Luck, type Outcome } from './outcome.ts';

/** A job with some changes of its file: how it comes out, or why it cannot be. */
export type Variant =
  | {
      readonly kind: 'possible';
      readonly edits: readonly Edit[];
      readonly job: Job;
      readonly outcome: Outcome;
    }
  | Impossible;

export interface Impossible {
  readonly kind: 'impossible';
  readonly edits: readonly Edit[];
  /** In plain words, without a full stop. */
  readonly because: string;
}

/** What stands in the way of making a job that reads well. */
export interface Hindrance {
  /** In plain words, without a full stop. */
  readonly because: string;
  /** Changes that may take it out of the way, such as another place to touch an edge; none when nothing is known to. */
  readonly instead: readonly Edit[];
}

/** Null when nothing stands in the way. Asked only of what is about to be shown: it lays out stops and cutters. */
export type Obstacle = (job: Job) => Hindrance | null;

/** Tries jobs on one luck, each change of the file once. */
export interface Bench {
  readonly variants: Variants;
  readonly luck: Luck;
  readonly tryOut: (edits: readonly Edit[], dialledTurns?: number) => Variant;
  /**
   * The same, but it can also be made: what stands in the way is taken out of it by further changes, which the answer
   * holds, or else it is refused.
   */
  readonly tryAndMake: (edits: readonly Edit[], dialledTurns?: number) => Variant;
  /** The same job, more trials or another seed; nothing is remembered across. */
  readonly withLuck: (luck: Luck) => Bench;
}

export function benchOf(variants: Variants, luck: Luck, obstacle: Obstacle): Bench {
  const known = new Map<string, Variant>();
  const made = new Map<string, Variant>();
  const tryOut = (edits: readonly Edit[], dialledTurns = 0): Variant =>
    once(known, edits, dialledTurns, () => tryEdits(variants, luck, edits, dialledTurns));
  return {
    variants,
    luck,
    tryOut,
    tryAndMake: (edits, dialledTurns = 0) =>
      once(made, edits, dialledTurns, () =>
        tryAndMend((some) => tryOut(some, dialledTurns), obstacle, edits),
      ),
    withLuck: (other) => benchOf(variants, other, obstacle),
  };
}

function once<T>(
  known: Map<string, T>,
  edits: readonly Edit[],
  dialledTurns: number,
  now: () => T,
): T {
  const key = JSON.stringify([edits, dialledTurns]);
  const before = known.get(key);
  if (before !== undefined) return before;
  const found = now();
  known.set(key, found);
  return found;
}

/** Two zeros with two edges each, and a place on the bed. */
const MOST_MENDED = 6;

function tryAndMend(tryOut: Bench['tryOut'], obstacle: Obstacle, edits: readonly Edit[]): Variant {
  let first: string | null = null;
  let tried = edits;
  for (let mended = 0; ; mended++) {
    const variant = tryOut(tried);
    if (variant.kind === 'impossible')
      return first === null ? variant : { kind: 'impossible', edits, because: first };
    const hindrance = obstacle(variant.job);
    if (hindrance === null) return variant;
    first ??= hindrance.because;
    if (mended === MOST_MENDED || hindrance.instead.length === 0)
      return { kind: 'impossible', edits, because: first };
    tried = [
      ...tried.filter((one) => !hindrance.instead.some((other) => isSame(one, other))),
      ...hindrance.instead,
    ];
  }
}

const isSame = (one: Edit, other: Edit): boolean =>
  one.path.length === other.path.length && one.path.every((key, k) => key === other.path[k]);

function tryEdits(
  variants: Variants,
  luck: Luck,
  edits: readonly Edit[],
  dialledTurns: number,
): Variant {
  const read = variants.read(edits);
  if (!read.ok) return { kind: 'impossible', edits, because: wordsOf(read.faults) };
  const { job } = read.value;
  const outcome = tried(job, luck, { ...AS_IT_IS, dialledTurns });
  return outcome === null
    ? {
        kind: 'impossible',
        edits,
        because: 'the contacts are too close together for what may be off: some blanks do not seat',
      }
    : { kind: 'possible', edits, job, outcome };
}

/** The first fault, without its place: the lines of a variant are not those of the file. */
function wordsOf(faults: readonly Fault[]): string {
  const [fault] = faults;
  return fault === undefined ? 'it cannot be read' : fault.message;
}

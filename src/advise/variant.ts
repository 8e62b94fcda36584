import type { Fault } from '../job/fault.ts';
import { editText, type Edit } from '../job/edit.ts';
import type { Job } from '../job/job.ts';
import type { Variants } from '../job/variants.ts';
import { tried, type Luck, type Outcome } from './outcome.ts';

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

/**
 * What stands in the way of making a job that reads well, in words; null when nothing does. Asked only of what is about to
 * be shown, since it lays out stops and moves the cutter over them.
 */
export type Obstacle = (job: Job) => string | null;

/** Tries jobs on one luck, each change of the file once. */
export interface Bench {
  readonly variants: Variants;
  readonly luck: Luck;
  readonly tryOut: (edits: readonly Edit[]) => Variant;
  /** The same, refused when it cannot be made. */
  readonly tryAndMake: (edits: readonly Edit[]) => Variant;
  /** The same job, more trials or another seed; nothing is remembered across. */
  readonly withLuck: (luck: Luck) => Bench;
}

export function benchOf(variants: Variants, luck: Luck, obstacle: Obstacle): Bench {
  const known = new Map<string, Variant>();
  const made = new Map<string, string | null>();
  const tryOut = (edits: readonly Edit[]): Variant => {
    const key = keyOf(edits);
    const before = known.get(key);
    if (before !== undefined) return before;
    const now = tryEdits(variants, luck, edits);
    known.set(key, now);
    return now;
  };
  return {
    variants,
    luck,
    tryOut,
    tryAndMake: (edits) => {
      const variant = tryOut(edits);
      if (variant.kind === 'impossible') return variant;
      const key = keyOf(edits);
      if (!made.has(key)) made.set(key, obstacle(variant.job));
      const because = made.get(key) ?? null;
      return because === null ? variant : { kind: 'impossible', edits, because };
    },
    withLuck: (other) => benchOf(variants, other, obstacle),
  };
}

const keyOf = (edits: readonly Edit[]): string => JSON.stringify(edits);

function tryEdits(variants: Variants, luck: Luck, edits: readonly Edit[]): Variant {
  const read = variants.read(edits);
  if (!read.ok) return { kind: 'impossible', edits, because: wordsOf(read.faults) };
  const { job } = read.value;
  const outcome = tried(job, luck);
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

/** What to write into the job file, each change in its own keys. */
export const editsText = (edits: readonly Edit[]): string => edits.map(editText).join('; ');

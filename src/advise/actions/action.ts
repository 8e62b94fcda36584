import type { Edit } from '../../job/edit.ts';
import type { Job } from '../../job/job.ts';
import type { Outcome } from '../outcome.ts';
import type { Variants } from '../../job/variants.ts';

/** What an action works on; two that share one do the same thing and never stand together. */
export type Target =
  | 'locating'
  | 'size'
  | 'thickness'
  | 'edges'
  | 'stops made'
  | 'contact height'
  | 'fence contacts'
  | 'side contact'
  | 'seat'
  | 'clamping'
  | 'turn'
  | 'zero'
  | 'where zero is touched'
  | 'heights'
  | 'where height is touched'
  | 'cup'
  | 'machine lean'
  | 'machine scale'
  | 'cutter lean'
  | 'lost motion'
  | 'bed'
  | 'cutters'
  | 'dowel play'
  | 'movement'
  | 'test piece'
  | 'limit';

/** One thing that can be done, in a woodworker's words and in the job's own keys. */
export interface Action {
  /** Short and stable: `opposite corner`. */
  readonly name: string;
  /** What to do, as an order, without a full stop. */
  readonly words: string;
  readonly targets: readonly Target[];
  readonly edits: readonly Edit[];
  /** Test pieces that are turned and measured; 0 for none. */
  readonly dialledTurns: number;
  /** For the whole batch: an estimate. */
  readonly minutes: number;
  /** It changes what is asked for instead of how well it is done; never part of a sequence. */
  readonly changes: 'the work' | 'the part';
}

/** What actions are found from. */
export interface Case {
  readonly variants: Variants;
  readonly job: Job;
  /** The job as it is. */
  readonly outcome: Outcome;
}

export function action(
  name: string,
  words: string,
  targets: readonly Target[],
  minutes: number,
  edits: readonly Edit[],
): Action {
  return { name, words, targets, edits, dialledTurns: 0, minutes, changes: 'the work' };
}

/** Whether both can be done and do not do the same thing. */
export function goTogether(one: Action, other: Action): boolean {
  return (
    !one.targets.some((target) => other.targets.includes(target)) &&
    !one.edits.some((a) => other.edits.some((b) => overlaps(a, b)))
  );
}

/** One says something within what the other says. */
function overlaps({ path: a }: Edit, { path: b }: Edit): boolean {
  const shared = Math.min(a.length, b.length);
  return a.slice(0, shared).every((key, k) => key === b[k]);
}

export const editsTogether = (actions: readonly Action[]): readonly Edit[] =>
  actions.flatMap(({ edits }) => edits);

export const turnsTogether = (actions: readonly Action[]): number =>
  Math.max(0, ...actions.map(({ dialledTurns }) => dialledTurns));

/** What a piece of work is about. */
export type Phase = 'trials' | 'shares' | 'worst case' | 'gauge' | 'batches';

/** How far a piece of that work is, 0 to 1. */
export interface Stage {
  readonly phase: Phase;
  readonly done: number;
}

/**
 * Work in small steps, so that whoever runs it can show how far it is and leave it where it stands: each step takes
 * no longer than one batch of trials.
 */
export type Steps<T> = Generator<Stage, T, void>;

/** All steps in one go. */
export function atOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

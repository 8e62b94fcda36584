import type { Distribution } from '../num/distribution.ts';
import type { Origin, Recurrence } from '../job/job.ts';

/** One thing that can be off: by how much, how it recurs, and why we think so. */
export interface Source {
  /** Stable, for shares and addresses: `blank width`, `seat gaps`. */
  readonly id: string;
  /** In a woodworker's words, for the middle of a sentence. */
  readonly words: string;
  /** What was written, or what the table of defaults says. */
  readonly text: string;
  readonly distribution: Distribution;
  readonly recurs: Recurrence;
  readonly origin: Origin;
  /** Which of the model's deviations draw from it, by index. */
  readonly deviations: readonly number[];
}

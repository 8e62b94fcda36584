import type { Result } from '../../num/result.ts';
import { faulty } from '../../num/result.ts';

/** What is wrong with a written value, and what to write instead; the place is added by the reader. */
export interface TextFault {
  /** A clause that begins with the value as it was written. */
  readonly message: string;
  readonly instead: string;
}

export const textFault = (message: string, instead: string): Result<never, TextFault> =>
  faulty([{ message, instead }]);

import type { Fault } from '../job/fault.ts';

/** Exit codes, as the README tells them; the last is what shells give for Ctrl-C (128 and the signal's number). */
export const EXIT = { good: 0, missed: 1, badInput: 2, ourFault: 3, stopped: 130 } as const;

/** Ends a verb early with something to say to the user; the shell prints it and exits. */
export class Refusal extends Error {
  /** Single faults with their places, when there are any. */
  readonly faults: readonly Fault[];
  override readonly name = 'Refusal';
  readonly code: number;

  constructor(message: string, code: number = EXIT.badInput, faults: readonly Fault[] = []) {
    super(message);
    this.code = code;
    this.faults = faults;
  }
}

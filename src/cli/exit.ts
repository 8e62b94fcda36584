/** Exit codes, as the README tells them. */
export const EXIT = { good: 0, missed: 1, badInput: 2, ourFault: 3 } as const;

/** Ends a verb early with something to say to the user; the shell prints it and exits. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly code: number;

  constructor(message: string, code: number = EXIT.badInput) {
    super(message);
    this.code = code;
  }
}

/** Thrown when we are wrong, never when the world is; only the outermost shell catches it. */
export class InvariantError extends Error {
  override readonly name = 'InvariantError';
}

/** @throws InvariantError unless `condition` holds; the message is for us, not for the user. */
export function invariant(condition: boolean, message: string): asserts condition {
  if (!condition) throw new InvariantError(message);
}

/** Ends a `switch` over a union, so that a new member fails to compile where it must be answered. */
export function unreachable(value: never): never {
  throw new InvariantError(`unreachable: ${JSON.stringify(value)}`);
}

/** The world may be wrong: either a value, or every fault found. */
export type Result<T, E> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly E[] };

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value });
export const faulty = <E>(faults: readonly E[]): Result<never, E> => ({ ok: false, faults });

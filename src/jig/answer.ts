import type { StopsAnswer } from './stop-part.ts';

export type Cannot = Extract<StopsAnswer, { kind: 'cannot' }>;

/** A step of the making: what it made, or why it cannot. */
export type Step<T> = { readonly kind: 'made'; readonly value: T } | Cannot;

export const made = <T>(value: T): Step<T> => ({ kind: 'made', value });

export const cannot = (because: string, wouldFit: string): Cannot => ({
  kind: 'cannot',
  because,
  wouldFit,
});

/** A length as a person reads it: at most two decimals, none for whole millimetres. */
export const mm = (lengthMm: number): string => `${figure(lengthMm)} mm`;

/** The same as it is written in a job or shop file, where lengths are in mm. */
export const figure = (lengthMm: number): string => `${Number(lengthMm.toFixed(2))}`;

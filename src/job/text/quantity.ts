import type { Result } from '../../num/result.ts';
import type { TextFault } from './text-fault.ts';

/** A number in our own unit (mm, radians, tangents, shares), and the unit that was written with it. */
export interface Measured {
  readonly value: number;
  /** Null when a bare number was written. */
  readonly unit: string | null;
}

/** A kind of value that people write, and how it is read. */
export interface Quantity {
  /** With its article, for messages: `a length`. */
  readonly what: string;
  readonly examples: readonly string[];
  /** Reads one signed value. */
  readonly read: (text: string) => Result<Measured, TextFault>;
  /** What follows one number of a range and holds for both ends: ` per 200`, ` deg`; null when each end carries its own unit. */
  readonly sharedTail: (text: string) => string | null;
  /** Largest deviation that is believed, in our unit, and in the words of the person. */
  readonly largestSpread: { readonly value: number; readonly text: string };
}

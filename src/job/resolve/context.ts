import type { Fault, Note, Place } from '../fault.ts';
import type { Holder, Places } from '../file/places.ts';
import { keyPlace, startOf, valuePlace } from '../file/places.ts';
import type { Origin } from '../job.ts';
import type { Written } from '../schema/raw-shop.ts';

/** What the resolving functions share: where things stand, and where they tell what is wrong. */
export interface Context {
  readonly places: Places;
  readonly faults: Fault[];
  readonly notes: Note[];
  /** Mappings and lists out of which something was taken: no conclusions from what they lack. */
  readonly touched: ReadonlySet<object>;
  /** Those out of which a faulty value was taken: no conclusions from what is left. */
  readonly spoilt: ReadonlySet<object>;
  /** Drawings that are there, by the words of the job. */
  readonly drawings: ReadonlyMap<string, Uint8Array>;
  /** What the gauges of the shop are good to, by name, and the mapping they stand in. */
  readonly gauges: Readonly<Record<string, Written>>;
}

/** A key of a mapping, or an item of a list. */
export type At = readonly [holder: object, key: string | number];

export function fault(context: Context, at: At | Place, message: string, instead: string): void {
  context.faults.push({ ...placeOf(context, at), message, instead });
}

export function note(context: Context, at: At | Place, message: string): void {
  context.notes.push({ ...placeOf(context, at), message });
}

/** Where the key of a mapping stands. */
export const placeOfKey = (context: Context, holder: object, key: string): Place =>
  keyPlace(context.places, holder as Holder, key);

/** Where a mapping or list begins. */
export const startPlace = (context: Context, holder: object): Place =>
  startOf(context.places, holder as Holder);

export function statedAt(context: Context, at: At): Origin {
  const { file, line } = placeOf(context, at);
  return { kind: 'stated', file, line };
}

const placeOf = (context: Context, at: At | Place): Place => {
  if ('line' in at) return { file: at.file, line: at.line, column: at.column };
  return valuePlace(context.places, at[0] as Holder, at[1]);
};

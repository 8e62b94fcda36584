import type { Place } from '../fault.ts';

/** A mapping or list as it was read. */
export type Holder = Readonly<Record<string, unknown>> | readonly unknown[];

interface Entry {
  readonly key: Place;
  readonly value: Place;
}

/**
 * Where everything that was read stands. Kept beside the plain values, by the identity of the
 * mapping or list, so that values can be merged and still know their file and line.
 */
export interface Places {
  readonly start: Map<object, Place>;
  readonly entries: Map<object, Map<string, Entry>>;
}

export const noPlaces = (): Places => ({ start: new Map(), entries: new Map() });

/** Where the value of this key stands; for a key that is not there, where its holder begins. */
export function valuePlace(places: Places, holder: Holder, key: string | number): Place {
  return places.entries.get(holder)?.get(String(key))?.value ?? startOf(places, holder);
}

/** Where the key itself stands. */
export function keyPlace(places: Places, holder: Holder, key: string | number): Place {
  return places.entries.get(holder)?.get(String(key))?.key ?? startOf(places, holder);
}

/** Where a mapping or list begins. */
export function startOf(places: Places, holder: Holder): Place {
  return places.start.get(holder) ?? { file: '', line: 1, column: 1 };
}

import type { Place } from '../fault.ts';

/** A mapping or list as it was read. */
export type Holder = Readonly<Record<string, unknown>> | readonly unknown[];

export interface Entry {
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

/** A copy that may be changed, of which everything stands where it stood. */
export function copyWithPlaces(
  root: object,
  places: Places,
): { readonly root: Holder; readonly places: Places } {
  const copied = noPlaces();
  const copy = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) return value;
    const made = Array.isArray(value)
      ? value.map(copy)
      : Object.fromEntries(Object.entries(value).map(([key, one]) => [key, copy(one)]));
    const start = places.start.get(value);
    const entries = places.entries.get(value);
    if (start !== undefined) copied.start.set(made, start);
    if (entries !== undefined) copied.entries.set(made, new Map(entries));
    return made;
  };
  return { root: copy(root) as Holder, places: copied };
}

import type { Sketch } from './sketch.ts';
import { CUT_SKETCHES } from './sketches-cut.ts';
import { PLACE_SKETCHES } from './sketches-place.ts';

/**
 * Small pictures in plain characters, by key. They stand beside the words of `explain` and in the key
 * reference; angles and gaps are drawn far too large. Seen from above, X to the right, unless said.
 */
const ALL: readonly Sketch[] = [...PLACE_SKETCHES, ...CUT_SKETCHES];

const BY_KEY = new Map(ALL.flatMap(({ keys, lines }) => keys.map((key) => [key, lines] as const)));

/** The picture of a key as lines of plain characters, at most 80 wide; null where words are enough. */
export const sketchOf = (key: string): string | null => BY_KEY.get(key) ?? null;

/** Every key that has a picture. */
export const sketchedKeys = (): readonly string[] => [...BY_KEY.keys()];

/** Pictures with the keys that share each. */
export const sketches = (): readonly Sketch[] => ALL;

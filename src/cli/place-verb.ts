import { basename, extname } from 'node:path';
import { placeWell } from '../advise/place/place.ts';
import { benchOf } from '../advise/variant.ts';
import { told, type Tell } from './compare-verb.ts';
import { EXIT } from './exit.ts';
import { loadVariants } from './load.ts';
import { obstacleOf } from './obstacle.ts';
import { placeJson } from './place-json.ts';
import { placeText } from './place-text.ts';
import type { Say } from './verbs.ts';
import { writeVariants } from './write-variants.ts';

export interface PlaceVerbOptions {
  readonly seed: number;
  /** Blanks that the gain is told with. */
  readonly trials: number;
  readonly json: boolean;
  /** Where the improved job file goes; null for none. */
  readonly write: string | null;
}

/** Searching takes fewer blanks than telling. */
const SEARCH_TRIALS = 1024;

/** Where the contacts of a job serve its needs best. */
export async function placeVerb(
  path: string,
  { seed, trials, json, write }: PlaceVerbOptions,
  tell: Tell,
  say: Say,
): Promise<number> {
  const variants = loadVariants(path);
  const bench = benchOf(variants, { seed, trials }, obstacleOf);
  const searchTrials = Math.min(SEARCH_TRIALS, trials);
  const found = await told(placeWell(bench, { searchTrials }), tell);
  say(json ? placeJson(found, { seed, trials }) : placeText(found, trials, seed));
  const words = (text: string): void => {
    if (!json) say(text);
  };
  const { advice } = found;
  if (write !== null && advice.kind === 'move') {
    const name = basename(path, extname(path));
    for (const file of writeVariants(variants, write, [{ name, edits: advice.found.edits }]))
      words(
        `\nwrote ${file}\nCheck it with: flipwright predict ${file} --seed ${seed} --trials ${trials} --digits 4`,
      );
  } else if (write !== null) words('\nNothing to write: no file was written.');
  return EXIT.good;
}

import { basename, extname, join } from 'node:path';
import {
  compareWays,
  type Comparison,
  type CompareOptions,
  type Step,
} from '../advise/ways/compare.ts';
import { benchOf } from '../advise/variant.ts';
import { fileNameOf } from '../export/plain-words.ts';
import { comparePage } from '../sheet/compare-page.ts';
import { compareJson } from './compare-json.ts';
import { compareText } from './compare-text.ts';
import { EXIT } from './exit.ts';
import { loadVariants } from './load.ts';
import { obstacleOf } from './obstacle.ts';
import type { Say } from './verbs.ts';
import { writeTogether } from './write-together.ts';
import { writeVariants } from './write-variants.ts';

export interface AdviceOptions {
  readonly seed: number;
  /** Blanks that what is shown is tried with. */
  readonly trials: number;
  readonly json: boolean;
  /** Where the picture goes; null for none. */
  readonly out: string | null;
  /** Where the job files of what is shown go; null for none. */
  readonly write: string | null;
}

/** Told how far it is; lets others have their turn. */
export type Tell = (step: Step | null) => Promise<void>;

/** Sorting out takes fewer blanks than showing. */
const SCREEN_TRIALS = 1000;

/** All ways of locating a job side by side: a table, a picture, and job files of the rows when asked for. */
export async function compareVerb(
  path: string,
  options: AdviceOptions & Pick<CompareOptions, 'which'>,
  version: string,
  tell: Tell,
  say: Say,
): Promise<number> {
  const variants = loadVariants(path);
  const { seed, trials } = options;
  const bench = benchOf(variants, { seed, trials }, obstacleOf);
  const screenTrials = Math.min(SCREEN_TRIALS, trials);
  const found = await told(compareWays(bench, { screenTrials, which: options.which }), tell);
  say(options.json ? compareJson(found, options) : compareText(found, trials, seed));
  const words = (text: string): void => {
    if (!options.json) say(text);
  };
  words('');
  if (options.out !== null) {
    const folder = join(options.out, fileNameOf(basename(path, extname(path))));
    writeTogether(folder, [{ name: 'compare.html', bytes: comparePage(found, options, version) }]);
    words(`wrote ${join(folder, 'compare.html')}`);
  }
  if (options.write !== null)
    for (const file of writeVariants(variants, options.write, namesOf(found)))
      words(`wrote ${file}`);
  words(
    `A row by itself: flipwright compare ${path} --write ways, then flipwright predict ways/way-01.yaml --seed ${seed} --trials ${trials} --digits 4`,
  );
  return EXIT.good;
}

const namesOf = ({ rows }: Comparison) =>
  rows.map(({ edits }, k) => ({ name: `way-${String(k + 1).padStart(2, '0')}`, edits }));

/** Runs something that tells how far it is to its end. */
export async function told<T>(run: Generator<Step, T>, tell: Tell): Promise<T> {
  for (;;) {
    const next = run.next();
    if (next.done === true) {
      await tell(null);
      return next.value;
    }
    await tell(next.value);
  }
}

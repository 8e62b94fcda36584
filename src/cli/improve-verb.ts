import { improve, type Improvement } from '../advise/actions/improve.ts';
import { benchOf } from '../advise/variant.ts';
import { fileNameOf } from '../export/plain-words.ts';
import { told, type AdviceOptions, type Tell } from './compare-verb.ts';
import { EXIT } from './exit.ts';
import { improveJson } from './improve-json.ts';
import { improveText } from './improve-text.ts';
import { loadVariants } from './load.ts';
import { obstacleOf } from './obstacle.ts';
import type { Say } from './verbs.ts';
import { writeVariants } from './write-variants.ts';

/** Sequences are sorted out with so many; what is shown gets the rest. */
const SCREEN_TRIALS = 1000;

/** What to do first about a job, the best few things together, or to leave it alone. */
export async function improveVerb(
  path: string,
  options: Omit<AdviceOptions, 'out'>,
  tell: Tell,
  say: Say,
): Promise<number> {
  const variants = loadVariants(path);
  const { seed, trials } = options;
  const bench = benchOf(variants, { seed, trials }, obstacleOf);
  const screenTrials = Math.min(SCREEN_TRIALS, trials);
  const found = await told(improve(bench, { screenTrials }), tell);
  say(options.json ? improveJson(found, options) : improveText(found, trials, seed));
  const files =
    options.write === null ? [] : writeVariants(variants, options.write, namesOf(found));
  if (options.json) return EXIT.good;
  if (files.length > 0) say('');
  for (const file of files) say(`wrote ${file}`);
  return EXIT.good;
}

/** Test pieces have no key in a job file. */
function namesOf({ singles, sequence }: Improvement) {
  return [
    ...(sequence === null || sequence.edits.length === 0
      ? []
      : [{ name: 'all-of-it', edits: sequence.edits }]),
    ...singles.flatMap(({ action, edits }, k) =>
      edits.length === 0
        ? []
        : [{ name: `${String(k + 1).padStart(2, '0')}-${fileNameOf(action.name)}`, edits }],
    ),
  ];
}

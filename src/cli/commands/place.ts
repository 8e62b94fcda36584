import { ADVICE_TRIALS, DEFAULT_SEED, seedFrom, trialsFrom } from '../options.ts';
import { painted } from '../painted.ts';
import { steps } from '../steps.ts';
import { again } from '../watched.ts';
import { example, withJson, withWatch } from './shell.ts';
import type { AddCommand } from './shell.ts';

interface PlaceWords {
  readonly seed: number;
  readonly trials: number;
  readonly json: boolean;
  readonly watch: boolean;
  readonly write?: string;
}

/** Where the stops and dowels serve the needs best. */
export const addPlace: AddCommand = (program, { say, paint }) => {
  const verb = withWatch(withJson(program.command('place')))
    .argument('<job>', 'a job file')
    .option(
      '--seed <number>',
      'which luck to draw; the same seed gives the same figures',
      seedFrom,
      DEFAULT_SEED,
    )
    .option('--trials <number>', 'how many blanks the gain is told with', trialsFrom, ADVICE_TRIALS)
    .option('--write <folder>', 'write the improved job file there; never over one that is there')
    .description('where stops, buttons and dowels serve this part best, or to leave them')
    .action(async (job: string, { watch, write, ...options }: PlaceWords) => {
      const { placeVerb } = await import('../place-verb.ts');
      const tell = options.json ? say : painted(say, paint);
      process.exitCode = await again([job], watch, () =>
        placeVerb(job, { ...options, write: write ?? null }, steps('place'), tell),
      );
    });
  example(verb, 'flipwright place jigs/wall-clock-plain.yaml --write placed');
};

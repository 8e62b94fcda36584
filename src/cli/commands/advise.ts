import type { Command } from '../command-line.ts';
import { ADVICE_TRIALS, DEFAULT_SEED, seedFrom, trialsFrom } from '../options.ts';
import { painted } from '../painted.ts';
import { steps } from '../steps.ts';
import { again } from '../watched.ts';
import { example, withJson, withWatch } from './shell.ts';
import type { AddCommand } from './shell.ts';

interface AdviceWords {
  readonly seed: number;
  readonly trials: number;
  readonly json: boolean;
  readonly watch: boolean;
  readonly write?: string;
}

const adviceFrom = ({ seed, trials, json, write }: AdviceWords) => ({
  seed,
  trials,
  json,
  write: write ?? null,
});

const advising = (verb: Command): Command =>
  withWatch(withJson(verb))
    .argument('<job>', 'a job file')
    .option(
      '--seed <number>',
      'which luck to draw; the same seed gives the same figures',
      seedFrom,
      DEFAULT_SEED,
    )
    .option('--trials <number>', 'how many blanks to try', trialsFrom, ADVICE_TRIALS)
    .option('--write <folder>', 'write the changed job files there; never over one that is there');

/** Every way of locating side by side. */
export const addCompare: AddCommand = (program, { say, paint, version }) => {
  const verb = advising(program.command('compare'))
    .option('--out <folder>', 'where the folder of the job goes, with a picture', 'exports')
    .option('--all', 'show every way, not only the best of each kind', false)
    .description('every way of locating the blank side by side: chance, minutes, things to make')
    .action(async (job: string, options: AdviceWords & { all: boolean; out: string }) => {
      const { compareVerb } = await import('../compare-verb.ts');
      const asked = {
        ...adviceFrom(options),
        // A program that reads figures wants no picture.
        out: options.json ? null : options.out,
        which: options.all ? ('all' as const) : ('best' as const),
      };
      const tell = options.json ? say : painted(say, paint);
      process.exitCode = await again([job], options.watch, () =>
        compareVerb(job, asked, version, steps('way'), tell),
      );
    });
  example(verb, 'flipwright compare jigs/wall-clock-plain.yaml --write ways');
};

/** What to do first, or to leave it alone. */
export const addImprove: AddCommand = (program, { say, paint }) => {
  const verb = advising(program.command('improve'))
    .description('what to do first, what it gains and costs, or to leave it alone')
    .action(async (job: string, options: AdviceWords) => {
      const { improveVerb } = await import('../improve-verb.ts');
      const tell = options.json ? say : painted(say, paint);
      process.exitCode = await again([job], options.watch, () =>
        improveVerb(job, adviceFrom(options), steps('try'), tell),
      );
    });
  example(verb, 'flipwright improve jigs/wall-clock-plain.yaml');
};

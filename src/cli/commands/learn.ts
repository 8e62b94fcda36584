import { addingOf, gathered, partFrom } from '../learn-options.ts';
import { DEFAULT_SEED, LEARN_TRIALS, seedFrom, trialsFrom } from '../options.ts';
import { withJson } from './shell.ts';
import type { AddCommand } from './shell.ts';

interface LearnWords {
  readonly seed: number;
  readonly trials: number;
  readonly json: boolean;
  readonly save: boolean;
  readonly part?: number;
  readonly add: readonly string[];
  readonly gauge: string;
  readonly note: string;
}

export const addLearn: AddCommand = (program, { say }) => {
  withJson(program.command('learn'))
    .argument('<job>', 'a job file')
    .option('--seed <number>', 'which luck the prediction draws', seedFrom, DEFAULT_SEED)
    .option('--trials <number>', 'how many blanks the prediction tries', trialsFrom, LEARN_TRIALS)
    .argument('[readings]', 'a readings file with test-piece: {...}')
    .option('--save', 'keep offsets and what was measured for the next prediction', false)
    .option('--part <number>', 'which part --add is about', partFrom)
    .option(
      '--add <need=figure>',
      'log a figure of a finished part; may be given again',
      gathered,
      [],
    )
    .option('--gauge <name>', 'what it was measured with', 'digital caliper')
    .option('--note <words>', 'anything to remember with it', '')
    .description(
      'what a test piece and finished parts teach: offsets, and whether the prediction holds',
    )
    .addHelpText(
      'after',
      '\nExample: flipwright learn jigs/wall-clock.yaml --part 3 --add "shaft in the pocket=0.11"\nThe log stands beside the job file as <job>.log.csv and may be edited by hand.',
    )
    .action(async (job: string, readings: string | undefined, options: LearnWords) => {
      const { learnVerb } = await import('../learn-verb.ts');
      process.exitCode = learnVerb(
        job,
        readings ?? null,
        {
          seed: options.seed,
          trials: options.trials,
          json: options.json,
          save: options.save,
          adding: addingOf(options),
        },
        say,
      );
    });
};

import {
  ALLOW_TRIALS,
  blanksFrom,
  DEFAULT_SEED,
  seedFrom,
  shareFrom,
  trialsFrom,
} from '../options.ts';
import { painted } from '../painted.ts';
import { steps } from '../steps.ts';
import { again } from '../watched.ts';
import { example, withJson, withWatch } from './shell.ts';
import type { AddCommand } from './shell.ts';

interface AllowWords {
  readonly seed: number;
  readonly trials: number;
  readonly json: boolean;
  readonly watch: boolean;
  readonly yield?: number;
  readonly of?: number;
}

/** How good each thing must be. */
export const addAllow: AddCommand = (program, { say, paint }) => {
  const verb = withWatch(withJson(program.command('allow')))
    .argument('<job>', 'a job file')
    .option(
      '--seed <number>',
      'which luck to draw; the same seed gives the same figures',
      seedFrom,
      DEFAULT_SEED,
    )
    .option('--trials <number>', 'how many blanks to try', trialsFrom, ALLOW_TRIALS)
    .option(
      '--yield <share>',
      'wished share of each need (default: good-enough of the job)',
      shareFrom,
    )
    .option('--of <count>', 'wish that so many blanks all meet every need, set up once', blanksFrom)
    .description('how large each thing that is off may be, and which gauge is good enough for it')
    .action(async (job: string, options: AllowWords) => {
      const { allowVerb } = await import('../allow-verb.ts');
      const { seed, trials, json } = options;
      const asked = { seed, trials, json, share: options.yield ?? null, of: options.of ?? null };
      const tell = json ? say : painted(say, paint);
      process.exitCode = await again([job], options.watch, () =>
        allowVerb(job, asked, steps('thing'), tell),
      );
    });
  example(verb, 'flipwright allow jigs/wall-clock-plain.yaml --yield 90% --of 6');
};

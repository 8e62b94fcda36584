import { painted } from '../painted.ts';
import type { WrittenOptions } from '../options.ts';
import { again } from '../watched.ts';
import {
  example,
  JUDGED,
  surrounded,
  trialOptions,
  withJson,
  withTrials,
  withWatch,
} from './shell.ts';
import type { AddCommand } from './shell.ts';

interface Written extends WrittenOptions {
  readonly json: boolean;
  readonly quick: boolean;
  readonly watch: boolean;
}

export const addPredict: AddCommand = (program, { say, paint }) => {
  const verb = withWatch(withJson(withTrials(program.command('predict'))))
    .argument('<job>', 'a job file')
    .option('--quick', 'answer at once from some ten thousand points, without what makes it', false)
    .description('how far the back will be off, how likely it is good, and what makes it')
    .action(async (job: string, options: Written) => {
      const tell = options.json ? say : painted(say, paint);
      if (options.quick) {
        const { quickVerb } = await import('../quick-verb.ts');
        process.exitCode = await again([job], options.watch, () =>
          quickVerb(job, options, options.json, tell),
        );
        return;
      }
      const { predictVerb } = await import('../verbs.ts');
      process.exitCode = await again([job], options.watch, () =>
        surrounded((around) => predictVerb(job, trialOptions(options), options.json, around, tell)),
      );
    });
  example(verb, 'flipwright predict jigs/wall-clock.yaml --seed 7', JUDGED);
};

import { painted } from '../painted.ts';
import { again } from '../watched.ts';
import { example, withJson, withWatch } from './shell.ts';
import type { AddCommand } from './shell.ts';

export const addHold: AddCommand = (program, { say, paint, version }) => {
  const verb = withWatch(withJson(program.command('hold')))
    .argument('<job>', 'a job file')
    .option('--out <folder>', 'where the folder of the job goes', 'exports')
    .description('clamps, what is in the way, pieces that come free, for both placings')
    .action(async (job: string, options: { out: string; json: boolean; watch: boolean }) => {
      const { holdVerb } = await import('../hold-verb.ts');
      process.exitCode = await again([job], options.watch, () =>
        holdVerb(
          job,
          { out: options.out, json: options.json, version },
          options.json ? say : painted(say, paint),
        ),
      );
    });
  example(
    verb,
    'flipwright hold jigs/wall-clock.yaml',
    'Exit code: 0 ready to cut, 1 something to put right first, 2 bad input, 3 our fault',
  );
};

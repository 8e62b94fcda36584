import { painted } from '../painted.ts';
import { again } from '../watched.ts';
import { example, JUDGED, withJson, withWatch } from './shell.ts';
import type { AddCommand } from './shell.ts';

export const addCheck: AddCommand = (program, { say, paint }) => {
  const verb = withWatch(withJson(program.command('check')))
    .argument('<job>', 'a job file')
    .description(
      'all that is wrong with a job file, all that is assumed, and whether it is good enough',
    )
    .action(async (job: string, options: { json: boolean; watch: boolean }) => {
      const { checkVerb } = await import('../check-verb.ts');
      const tell = options.json ? say : painted(say, paint);
      process.exitCode = await again([job], options.watch, () =>
        checkVerb(job, options.json, tell),
      );
    });
  example(verb, 'flipwright check jigs/wall-clock.yaml --watch', JUDGED);
};

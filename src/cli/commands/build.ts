import { BUILD_GROUPS, type BuildGroup } from '../build-groups.ts';
import { groupsFrom, type WrittenOptions } from '../options.ts';
import { painted } from '../painted.ts';
import { again } from '../watched.ts';
import { surrounded, trialOptions, withJson, withTrials, withWatch } from './shell.ts';
import type { AddCommand } from './shell.ts';

interface BuildWords extends WrittenOptions {
  readonly out: string;
  readonly only: ReadonlySet<BuildGroup>;
  readonly json: boolean;
  readonly watch: boolean;
}

export const addBuild: AddCommand = (program, { say, paint, version }) => {
  withWatch(withJson(withTrials(program.command('build'))))
    .argument('<jobs...>', 'job files; with several, their difference is told')
    .option('--out <folder>', 'where the folder of each job goes', 'exports')
    .option(
      '--only <groups>',
      `only some of it, with commas between: ${BUILD_GROUPS.join(', ')}`,
      groupsFrom,
      new Set<BuildGroup>(BUILD_GROUPS),
    )
    .description(
      'prediction, bench sheet, stops, parts and programs of the jig, into a folder for each job',
    )
    .addHelpText(
      'after',
      '\nExample: flipwright build jigs/wall-clock.yaml --watch\nAll files of a job are written, or none.',
    )
    .action(async (jobs: string[], options: BuildWords) => {
      const { buildVerb } = await import('../build-verb.ts');
      const tell = options.json ? say : painted(say, paint);
      process.exitCode = await again(jobs, options.watch, () =>
        surrounded((around) =>
          buildVerb(
            jobs,
            { out: options.out, groups: options.only, json: options.json, version },
            trialOptions(options),
            around,
            tell,
          ),
        ),
      );
    });
};

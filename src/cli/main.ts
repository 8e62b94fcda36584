#!/usr/bin/env node
import { existsSync, readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { BUILD_GROUPS, type BuildGroup } from './build-groups.ts';
import { EXIT, Refusal } from './exit.ts';
import { DEFAULT_SEED, DEFAULT_TRIALS, groupsFrom, seedFrom, trialsFrom } from './options.ts';
import type { Say } from './verbs.ts';

interface RunOptions {
  readonly seed: number;
  readonly trials: number;
}

interface BuildOptions extends RunOptions {
  readonly out: string;
  readonly only: ReadonlySet<BuildGroup>;
}

const version = (
  JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
    version: string;
  }
).version;

const say: Say = (text) => {
  process.stdout.write(`${text}\n`);
};

/** Loaded when a verb runs: help and slips of the keyboard are answered without waiting for it. */
const verbs = () => import('./verbs.ts');

function command(): Command {
  const program = new Command('flipwright')
    .description(
      'Predicts how true the back of a two-sided part will land on its front, and makes the stop and the bench sheet for it.',
    )
    .version(version)
    .exitOverride()
    .showHelpAfterError('(flipwright --help tells what there is)');
  const run = (verb: Command): Command =>
    verb
      .option(
        '--seed <number>',
        'which luck to draw; the same seed gives the same figures',
        seedFrom,
        DEFAULT_SEED,
      )
      .option('--trials <number>', 'how many blanks to try', trialsFrom, DEFAULT_TRIALS);

  run(program.command('predict'))
    .argument('<job>', 'a job file')
    .option('--json', 'print figures for programs', false)
    .description('how far the back will be off, how likely it is good, and what makes it')
    .addHelpText(
      'after',
      '\nExample: flipwright predict jigs/wall-clock.yaml --seed 7\nExit code: 0 good enough, 1 a need likely missed, 2 bad input, 3 our fault',
    )
    .action(async (job: string, options: RunOptions & { json: boolean }) => {
      const { predictVerb } = await verbs();
      process.exitCode = predictVerb(job, options, options.json, say);
    });
  program
    .command('check')
    .argument('<job>', 'a job file')
    .description(
      'all that is wrong with a job file, all that is assumed, and whether it is good enough',
    )
    .action(async (job: string) => {
      const { checkVerb } = await verbs();
      process.exitCode = await checkVerb(job, say);
    });
  program
    .command('new')
    .argument('[folder]', 'where to write', '.')
    .description('write a commented job and shop file to start from')
    .action(async (folder: string) => {
      const { newVerb } = await verbs();
      process.exitCode = newVerb(folder, say, existsSync);
    });
  program
    .command('schema')
    .argument('[folder]', 'where to write', '.')
    .description('write the JSON Schemas for editors, and the reference of all keys')
    .action(async (folder: string) => {
      const { schemaVerb } = await verbs();
      process.exitCode = schemaVerb(folder, say);
    });
  run(program.command('build'))
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
      '\nExample: flipwright build jigs/wall-clock.yaml\nAll files of a job are written, or none.',
    )
    .action(async (jobs: string[], options: BuildOptions) => {
      const { buildVerb } = await verbs();
      process.exitCode = await buildVerb(jobs, options.out, options, version, say, options.only);
    });
  return program;
}

// Somebody who reads only the first lines has seen what he wanted.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

try {
  await command().parseAsync();
} catch (error) {
  process.exitCode = told(error);
}

/** Says what went wrong and gives the exit code. */
function told(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.good : EXIT.badInput;
  if (error instanceof Refusal) {
    process.stderr.write(`${error.message}\n`);
    return error.code;
  }
  const { name, message } = error instanceof Error ? error : new Error(String(error));
  process.stderr.write(
    `flipwright ${version}: this is a bug of ours, nothing was lost: ${name}: ${message}\n` +
      'please report this line together with the job file\n',
  );
  return EXIT.ourFault;
}

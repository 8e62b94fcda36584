#!/usr/bin/env node
import { existsSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Command, CommanderError } from 'commander';
import { BUILD_GROUPS, type BuildGroup } from './build-groups.ts';
import { EXIT, Refusal } from './exit.ts';
import { addingOf, gathered, partFrom } from './learn-options.ts';
import {
  DEFAULT_DIGITS,
  DEFAULT_SEED,
  DEFAULT_TRIALS,
  LEARN_TRIALS,
  digitsFrom,
  groupsFrom,
  runOptions,
  secondsFrom,
  seedFrom,
  threadsFrom,
  trialsFrom,
  type WrittenOptions,
} from './options.ts';
import type { Surroundings } from './run-prediction.ts';
import type { Say } from './verbs.ts';

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
      .option(
        '--digits <number>',
        `how many digits must be certain; then as many blanks are tried as that takes (default: up to ${DEFAULT_DIGITS}, with ${DEFAULT_TRIALS} blanks)`,
        digitsFrom,
      )
      .option('--trials <number>', 'try no more blanks than this', trialsFrom)
      .option('--seconds <number>', 'stop trying after this time', secondsFrom)
      .option(
        '--gauge <spread>',
        'also tell what measuring every part with a gauge that is off by so much would do, such as ±0.03',
      )
      .option('--threads <number>', 'how many threads try blanks; changes no figure', threadsFrom);

  run(program.command('predict'))
    .argument('<job>', 'a job file')
    .option('--json', 'print figures for programs', false)
    .description('how far the back will be off, how likely it is good, and what makes it')
    .addHelpText(
      'after',
      '\nExample: flipwright predict jigs/wall-clock.yaml --seed 7\nExit code: 0 good enough, 1 a need likely missed, 2 bad input, 3 our fault',
    )
    .action(async (job: string, options: WrittenOptions & { json: boolean }) => {
      const { predictVerb } = await verbs();
      process.exitCode = await surrounded((around) =>
        predictVerb(job, runOptions(options, availableParallelism()), options.json, around, say),
      );
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
    .command('hold')
    .argument('<job>', 'a job file')
    .option('--out <folder>', 'where the folder of the job goes', 'exports')
    .description('clamps, what is in the way, pieces that come free, for both placings')
    .addHelpText(
      'after',
      '\nExample: flipwright hold jigs/wall-clock.yaml\nExit code: 0 ready to cut, 1 something to put right first, 2 bad input, 3 our fault',
    )
    .action(async (job: string, options: { out: string }) => {
      const { holdVerb } = await import('./hold-verb.ts');
      process.exitCode = holdVerb(job, options.out, version, say);
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
    .command('explain')
    .argument('[key]', 'a key of the job or shop file, such as blank.bevel, or its last word')
    .option('--json', 'print it for programs', false)
    .description('what a key means, its unit, what is taken when it is left out, a small sketch')
    .addHelpText('after', '\nExample: flipwright explain touch-height\nWithout a key: all of them.')
    .action(async (key: string | undefined, options: { json: boolean }) => {
      const { explainVerb } = await import('./explain-verb.ts');
      process.exitCode = explainVerb(key ?? null, options.json, say);
    });
  program
    .command('schema')
    .argument('[folder]', 'where to write', '.')
    .description('write the JSON Schemas for editors, and the reference of all keys')
    .action(async (folder: string) => {
      const { schemaVerb } = await verbs();
      process.exitCode = schemaVerb(folder, say);
    });
  program
    .command('bed')
    .argument(
      '<file>',
      'a shop file with heights of the bed, or a job file to see what they do to it',
    )
    .option('--json', 'print figures for programs', false)
    .option('--save', 'let predictions use what was measured', false)
    .option('--out <folder>', 'write a map of the bed, and the program that skims it')
    .description('how level and flat the bed is, and whether to shim it, skim it or leave it')
    .action(async (file: string, options: { json: boolean; save: boolean; out?: string }) => {
      const { bedVerb } = await import('./bed-verb.ts');
      process.exitCode = bedVerb(file, { ...options, out: options.out ?? null }, say);
    });
  program
    .command('square')
    .argument('<readings>', 'a readings file with square: [...]')
    .option('--json', 'print figures for programs', false)
    .option('--save', 'let predictions use what was measured', false)
    .description('how square the axes are and how long they measure, and which way told most')
    .action(async (readings: string, options: { json: boolean; save: boolean }) => {
      const { squareVerb } = await import('./square-verb.ts');
      process.exitCode = squareVerb(readings, options, say);
    });
  program
    .command('learn')
    .argument('<job>', 'a job file')
    .option('--seed <number>', 'which luck the prediction draws', seedFrom, DEFAULT_SEED)
    .option('--trials <number>', 'how many blanks the prediction tries', trialsFrom, LEARN_TRIALS)
    .argument('[readings]', 'a readings file with test-piece: {...}')
    .option('--json', 'print figures for programs', false)
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
      const { learnVerb } = await import('./learn-verb.ts');
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
    .action(
      async (
        jobs: string[],
        options: WrittenOptions & { out: string; only: ReadonlySet<BuildGroup> },
      ) => {
        const { buildVerb } = await verbs();
        process.exitCode = await surrounded((around) =>
          buildVerb(
            jobs,
            options.out,
            runOptions(options, availableParallelism()),
            version,
            around,
            say,
            options.only,
          ),
        );
      },
    );
  return program;
}

/** Runs what takes trials, with Ctrl-C ending them and not the program. */
async function surrounded(run: (around: Surroundings) => Promise<number>): Promise<number> {
  const { processSurroundings } = await import('./surroundings.ts');
  const around = processSurroundings();
  try {
    return await run(around);
  } finally {
    around.leave();
  }
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

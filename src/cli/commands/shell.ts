import { availableParallelism } from 'node:os';
import type { Command } from '../command-line.ts';
import type { Paint } from '../colour.ts';
import {
  DEFAULT_DIGITS,
  DEFAULT_SEED,
  DEFAULT_TRIALS,
  digitsFrom,
  runOptions,
  secondsFrom,
  seedFrom,
  threadsFrom,
  trialsFrom,
  type WrittenOptions,
} from '../options.ts';
import type { RunOptions, Surroundings } from '../run-prediction.ts';
import type { Say } from '../verbs.ts';

/** What every command of the program is given. */
export interface Shell {
  readonly version: string;
  readonly say: Say;
  readonly paint: Paint;
}

/** Puts one verb on the program. Verbs load their rooms when they run: help does not wait for them. */
export type AddCommand = (program: Command, shell: Shell) => void;

/** Runs what takes trials, with Ctrl-C ending them and not the program. */
export async function surrounded(run: (around: Surroundings) => Promise<number>): Promise<number> {
  const { processSurroundings } = await import('../surroundings.ts');
  const around = processSurroundings();
  try {
    return await run(around);
  } finally {
    around.leave();
  }
}

/** The option that every verb has. */
export const withJson = (verb: Command): Command =>
  verb.option('--json', 'print figures for programs', false);

/** The options of verbs that try blanks. */
export const withTrials = (verb: Command): Command =>
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
      '--gauge <spread or name>',
      'also tell what measuring every part would do, with a gauge that is off by so much, such as ±0.03, or with one of the shop file by its name, such as caliper',
    )
    .option('--threads <number>', 'how many threads try blanks; changes no figure', threadsFrom);

/** What was written for `withTrials`, on this computer. */
export const trialOptions = (written: WrittenOptions): RunOptions =>
  runOptions(written, availableParallelism());

/** What `--watch` runs again. */
export const withWatch = (verb: Command): Command =>
  verb.option('--watch', 'run again whenever the job, or a file that it names, is saved', false);

/** A line of examples and one of exit codes, under the help of a verb. */
export const example = (verb: Command, line: string, codes = EXITS): Command =>
  verb.addHelpText('after', `\nExample: ${line}\n${codes}`);

const EXITS = 'Exit code: 0 done, 2 bad input, 3 our fault';
/** Of verbs that judge. */
export const JUDGED =
  'Exit code: 0 good enough, 1 a need likely missed, 2 bad input, 3 our fault, 130 stopped by Ctrl-C';

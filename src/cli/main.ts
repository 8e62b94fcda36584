#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { Command, CommanderError } from './command-line.ts';
import { addCompare, addImprove } from './commands/advise.ts';
import { addAllow } from './commands/allow.ts';
import { addBed } from './commands/bed.ts';
import { addBuild } from './commands/build.ts';
import { addCheck } from './commands/check.ts';
import { addCompletion } from './commands/completion.ts';
import { addExplain } from './commands/explain.ts';
import { addHold } from './commands/hold.ts';
import { addLearn } from './commands/learn.ts';
import { addNew } from './commands/new.ts';
import { addPlace } from './commands/place.ts';
import { addPredict } from './commands/predict.ts';
import { addSchema } from './commands/schema.ts';
import type { AddCommand, Shell } from './commands/shell.ts';
import { addSquare } from './commands/square.ts';
import { paintFor } from './colour.ts';
import { EXIT, Refusal } from './exit.ts';
import { faultReport } from './fault-report.ts';

/** In the order of the work. */
const COMMANDS: readonly AddCommand[] = [
  addNew,
  addCheck,
  addExplain,
  addPredict,
  addCompare,
  addImprove,
  addPlace,
  addAllow,
  addHold,
  addBuild,
  addBed,
  addSquare,
  addLearn,
  addSchema,
  addCompletion,
];

const { version } = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
) as { version: string };

const shell: Shell = {
  version,
  say: (text) => {
    process.stdout.write(`${text}\n`);
  },
  paint: paintFor(process.stdout, process.env),
};

function program(): Command {
  const whole = new Command('flipwright')
    .description(
      'Predicts how true the back of a two-sided part will land on its front, and makes the stop and the bench sheet for it.',
    )
    .version(version)
    .exitOverride()
    .showHelpAfterError('(flipwright --help tells what there is)')
    .addHelpText(
      'after',
      '\nStart: flipwright new lid, then flipwright predict lid/job.yaml\nEach verb tells more with --help.',
    );
  for (const add of COMMANDS) add(whole, shell);
  return whole;
}

// Somebody who reads only the first lines has seen what he wanted.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

try {
  await program().parseAsync();
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
  const report = faultReport(error, {
    version,
    verb: process.argv[2] ?? '',
    node: process.version,
    platform: `${process.platform} ${process.arch}`,
  });
  process.stderr.write(
    `flipwright: this is a bug of ours, nothing was lost.\n${report}\nPlease send these lines, and the job file if it may be seen.\n`,
  );
  return EXIT.ourFault;
}

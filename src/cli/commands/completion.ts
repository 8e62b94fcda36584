import { Argument, type Command } from '../command-line.ts';
import { completionScript, HOW_TO_LOAD, SHELLS, type Shell as ShellName } from '../completion.ts';
import type { AddCommand } from './shell.ts';

export const addCompletion: AddCommand = (program, { say }) => {
  program
    .command('completion')
    .addArgument(new Argument('<shell>', 'your shell').choices(SHELLS))
    .description('a script that lets your shell complete verbs, options and keys')
    .addHelpText('after', `\n${Object.values(HOW_TO_LOAD).join('\n')}`)
    .action(async (shell: ShellName) => {
      const { jobRows, shopRows } = await import('../../job/schema/key-rows.ts');
      const keys = [...jobRows(), ...shopRows()]
        .map(({ path }) => path.replace(/\[ \]|\.< >/g, ''))
        .filter((path, k, all) => all.indexOf(path) === k);
      const verbs = program.commands.map((verb) => ({
        name: verb.name(),
        about: verb.description(),
        options: optionsOf(verb),
        words: verb.name() === 'explain' ? keys : verb.name() === 'completion' ? SHELLS : [],
      }));
      say(completionScript(shell, program.name(), verbs).trimEnd());
    });
};

const optionsOf = (verb: Command) =>
  [
    ...verb.options.map(({ long, description }) => ({ flag: long ?? '', about: description })),
    {
      flag: '--help',
      about: 'what it does',
    },
  ].filter(({ flag }) => flag !== '');

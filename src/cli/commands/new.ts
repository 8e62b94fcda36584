import { existsSync } from 'node:fs';
import { example, withJson } from './shell.ts';
import type { AddCommand } from './shell.ts';

export const addNew: AddCommand = (program, { say }) => {
  const verb = withJson(program.command('new'))
    .argument('[folder]', 'where to write', '.')
    .description('write a commented job and shop file to start from')
    .action(async (folder: string, options: { json: boolean }) => {
      const { newVerb } = await import('../verbs.ts');
      process.exitCode = newVerb(folder, options.json, say, existsSync);
    });
  example(verb, 'flipwright new lid');
};

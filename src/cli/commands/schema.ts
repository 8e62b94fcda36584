import { example, withJson } from './shell.ts';
import type { AddCommand } from './shell.ts';

export const addSchema: AddCommand = (program, { say }) => {
  const verb = withJson(program.command('schema'))
    .argument('[folder]', 'where to write', '.')
    .description('write the JSON Schemas for editors, and the reference of all keys')
    .action(async (folder: string, options: { json: boolean }) => {
      const { schemaVerb } = await import('../verbs.ts');
      process.exitCode = schemaVerb(folder, options.json, say);
    });
  example(verb, 'flipwright schema jigs');
};

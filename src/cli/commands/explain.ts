import { example, withJson } from './shell.ts';
import type { AddCommand } from './shell.ts';

export const addExplain: AddCommand = (program, { say }) => {
  const verb = withJson(program.command('explain'))
    .argument('[key]', 'a key of the job or shop file, such as blank.bevel, or its last word')
    .description('what a key means, its unit, what is taken when it is left out, a small sketch')
    .action(async (key: string | undefined, options: { json: boolean }) => {
      const { explainVerb } = await import('../explain-verb.ts');
      process.exitCode = explainVerb(key ?? null, options.json, say);
    });
  example(verb, 'flipwright explain touch-height (without a key: all of them)');
};

import { example, withJson } from './shell.ts';
import type { AddCommand } from './shell.ts';

export const addSquare: AddCommand = (program, { say }) => {
  const verb = withJson(program.command('square'))
    .argument('<readings>', 'a readings file with square: [...]')
    .option('--save', 'let predictions use what was measured', false)
    .description('how square the axes are and how long they measure, and which way told most')
    .action(async (readings: string, options: { json: boolean; save: boolean }) => {
      const { squareVerb } = await import('../square-verb.ts');
      process.exitCode = squareVerb(readings, options, say);
    });
  example(verb, 'flipwright square jigs/readings/square.yaml');
};

import { example, withJson } from './shell.ts';
import type { AddCommand } from './shell.ts';

export const addBed: AddCommand = (program, { say }) => {
  const verb = withJson(program.command('bed'))
    .argument(
      '<file>',
      'a shop file with heights of the bed, or a job file to see what they do to it',
    )
    .option('--save', 'let predictions use what was measured', false)
    .option('--out <folder>', 'write a map of the bed, and the program that skims it')
    .description('how level and flat the bed is, and whether to shim it, skim it or leave it')
    .action(async (file: string, options: { json: boolean; save: boolean; out?: string }) => {
      const { bedVerb } = await import('../bed-verb.ts');
      process.exitCode = bedVerb(file, { ...options, out: options.out ?? null }, say);
    });
  example(verb, 'flipwright bed jigs/shop.yaml --out exports/bed');
};

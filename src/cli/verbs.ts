import { basename, join } from 'node:path';
import { keyReference } from '../job/schema/key-reference.ts';
import { schemaFiles } from '../job/schema/published.ts';
import { newJobText, newShopText } from '../job/starting.ts';
import { goodEnough } from '../verdict/needs-met.ts';
import { correctionWarning, dialledLines } from './correction-warning.ts';
import { EXIT, Refusal } from './exit.ts';
import { withGauge } from './gauge-option.ts';
import { predictionJson } from './json.ts';
import { loadJob } from './load.ts';
import { predictionText } from './prediction-text.ts';
import { runPrediction, type RunOptions, type Surroundings } from './run-prediction.ts';
import { writeTogether } from './write-together.ts';

/** Prints to standard output; a verb returns its exit code. */
export type Say = (text: string) => void;

export async function predictVerb(
  path: string,
  options: RunOptions,
  json: boolean,
  around: Surroundings,
  say: Say,
): Promise<number> {
  const { job } = loadJob(path);
  const prediction = await runPrediction(job, withGauge(options, path), around);
  if (json) say(predictionJson(prediction, job.dialled ?? null));
  else {
    say(predictionText(job, prediction));
    for (const line of [...dialledLines(job), ...correctionWarning(path, job)]) say(line);
  }
  if (prediction.ended === 'interrupted') return EXIT.stopped;
  return goodEnough(prediction, job.goodEnoughShare) ? EXIT.good : EXIT.missed;
}

/** Writes a commented job and shop to start from; never over a file that is there. */
export function newVerb(
  folder: string,
  json: boolean,
  say: Say,
  exists: (path: string) => boolean,
): number {
  const files = [
    { name: 'job.yaml', bytes: newJobText() },
    { name: 'shop.yaml', bytes: newShopText() },
  ];
  for (const { name } of files) {
    if (exists(join(folder, name))) {
      throw new Refusal(`${join(folder, name)}: is already there; name another folder`);
    }
  }
  writeTogether(folder, files);
  const wrote = [...files.map(({ name }) => join(folder, name)), ...writeSchemas(folder)];
  if (json) say(JSON.stringify({ json: 1, wrote }, null, 2));
  else {
    for (const path of wrote) say(`wrote ${path}`);
    say(`next: flipwright check ${join(folder, 'job.yaml')}`);
    say(
      'then know the machine: flipwright bed and square; learn from a test piece and from parts: flipwright learn',
    );
  }
  return EXIT.good;
}

/** Writes the JSON Schemas that editors complete and check job files by, and the key reference. */
export function schemaVerb(folder: string, json: boolean, say: Say): number {
  const wrote = writeSchemas(folder);
  if (json) say(JSON.stringify({ json: 1, wrote }, null, 2));
  else say(`wrote ${wrote.join(' and ')}`);
  return EXIT.good;
}

/** @returns what was written: the folder of schemas, and the key reference. */
function writeSchemas(folder: string): readonly string[] {
  const schemas = join(folder, 'schema');
  writeTogether(
    schemas,
    schemaFiles().map(({ name, text }) => ({ name: basename(name), bytes: text })),
  );
  writeTogether(folder, [{ name: 'KEYS.md', bytes: keyReference() }]);
  return [schemas, join(folder, 'KEYS.md')];
}

import { basename, extname, join } from 'node:path';
import { fileNameOf } from '../export/plain-words.ts';
import { noteText } from '../job/fault.ts';
import { goodEnough } from '../verdict/needs-met.ts';
import { differences } from '../verdict/difference.ts';
import { verdictLine } from '../sheet/verdict-line.ts';
import { certainChanceText } from '../sheet/certain-words.ts';
import { BUILD_GROUPS, type BuildGroup } from './build-groups.ts';
import { EXIT, Refusal } from './exit.ts';
import { correctionWarning } from './correction-warning.ts';
import { DEFAULT_SEED } from './options.ts';
import { predictionJson } from './json.ts';
import { wrapped } from './lines.ts';
import { loadJob } from './load.ts';
import { predictJob } from './predict-job.ts';
import { predictionText } from './prediction-text.ts';
import { runPrediction, type RunOptions, type Surroundings } from './run-prediction.ts';
import { assumptionsOf } from '../job/assumptions.ts';
import { keyReference } from '../job/schema/key-reference.ts';
import { schemaFiles } from '../job/schema/published.ts';
import { newJobText, newShopText } from '../job/starting.ts';
import type { PredictOptions } from '../stackup/predict.ts';
import type { Prediction } from '../stackup/prediction.ts';
import type { Built } from './build-job.ts';
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
  const prediction = await runPrediction(job, options, around);
  say(json ? predictionJson(prediction) : predictionText(job, prediction));
  return goodEnough(prediction, job.goodEnoughShare) ? EXIT.good : EXIT.missed;
}

/** Enough trials to tell whether a need is likely missed. */
const CHECK_OPTIONS: PredictOptions = { seed: DEFAULT_SEED, trials: 10_000 };

/** All that is wrong, all that is assumed, and whether it is likely good enough as it stands. */
export async function checkVerb(path: string, say: Say): Promise<number> {
  const { job, notes } = loadJob(path);
  const { stopsFor } = await import('./build-job.ts');
  const { bedTrouble } = await import('../sheet/locating/bed-trouble.ts');
  if (job.locating === 'stops') stopsFor(job);
  const trouble = job.locating === 'stops' ? [] : bedTrouble(job);
  for (const line of trouble) say(`${path}: ${line}`);
  if (trouble.length === 0) say(`${path}: nothing is wrong`);
  for (const note of notes) say(noteText(note));
  for (const line of correctionWarning(path, job)) say(line);
  const assumed = assumptionsOf(job);
  say('');
  if (assumed.length === 0) say('Nothing is assumed: every figure is stated.');
  else say('Assumed, since neither the job nor the shop says it:');
  for (const { what, text, because } of assumed) {
    for (const line of wrapped(`  ${what}: ${text} (${because})`, '      ')) say(line);
  }
  const prediction = predictJob(job, CHECK_OPTIONS);
  say('');
  for (const line of wrapped(verdictLine(prediction, job.goodEnoughShare, job.shop.units)))
    say(line);
  const good = trouble.length === 0 && goodEnough(prediction, job.goodEnoughShare);
  return good ? EXIT.good : EXIT.missed;
}

/** Writes a commented job and shop to start from; never over a file that is there. */
export function newVerb(folder: string, say: Say, exists: (path: string) => boolean): number {
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
  for (const { name } of files) say(`wrote ${join(folder, name)}`);
  schemaVerb(folder, say);
  say(`next: flipwright check ${join(folder, 'job.yaml')}`);
  return EXIT.good;
}

/** Writes the JSON Schemas that editors complete and check job files by, and the key reference. */
export function schemaVerb(folder: string, say: Say): number {
  const schemas = join(folder, 'schema');
  writeTogether(
    schemas,
    schemaFiles().map(({ name, text }) => ({ name: basename(name), bytes: text })),
  );
  writeTogether(folder, [{ name: 'KEYS.md', bytes: keyReference() }]);
  say(`wrote ${schemas} and ${join(folder, 'KEYS.md')}`);
  return EXIT.good;
}

/** Builds every job in memory first, then writes each folder whole; with several, tells their difference. */
export async function buildVerb(
  paths: readonly string[],
  out: string,
  options: RunOptions,
  version: string,
  around: Surroundings,
  say: Say,
  groups: ReadonlySet<BuildGroup> = new Set(BUILD_GROUPS),
): Promise<number> {
  // The solids' library takes a moment to load; only this verb needs it.
  const { buildJob } = await import('./build-job.ts');
  const folders = paths.map((path) => join(out, fileNameOf(basename(path, extname(path)))));
  const twice = folders.find((folder, k) => folders.indexOf(folder) !== k);
  if (twice !== undefined)
    throw new Refusal(`two jobs would be written to ${twice}; rename one job file`);
  const built: Built[] = [];
  for (const path of paths)
    built.push(await buildJob(loadJob(path).job, options, version, around, groups));
  built.forEach(({ job, prediction, files, missing }, k) => {
    const written = writeTogether(folders[k]!, files);
    say(predictionText(job, prediction));
    say('');
    for (const { name } of files) {
      say(
        `wrote ${join(written.folder, name)}${written.replaced.includes(name) ? ' (replaced)' : ''}`,
      );
    }
    for (const words of missing) for (const line of wrapped(`not made: ${words}`, '  ')) say(line);
    if (written.others.length > 0) {
      say(`also in ${written.folder}, not from this build: ${written.others.join(', ')}`);
    }
    say('');
  });
  for (let k = 1; k < built.length; k++) {
    say(differenceLine(paths, k, built[0]!.prediction, built[k]!.prediction));
  }
  return EXIT.good;
}

function differenceLine(
  paths: readonly string[],
  k: number,
  before: Prediction,
  after: Prediction,
): string {
  const name = (path: string): string => basename(path, extname(path));
  const shared = differences(before, after);
  if (shared.length === 0)
    return `${name(paths[0]!)} and ${name(paths[k]!)} have no need of the same name.`;
  const each = shared.map(
    (one) =>
      `${one.need} ${certainChanceText(one.before, before.digitsAsked)} → ${certainChanceText(one.after, after.digitsAsked)}`,
  );
  return wrapped(
    `Good parts, ${name(paths[0]!)} → ${name(paths[k]!)}: ${each.join('; ')}`,
    '  ',
  ).join('\n');
}

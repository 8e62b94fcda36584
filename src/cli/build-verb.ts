import { basename, extname, join } from 'node:path';
import { fileNameOf } from '../export/plain-words.ts';
import { certainChanceText } from '../sheet/certain-words.ts';
import type { Prediction } from '../stackup/prediction.ts';
import { differences } from '../verdict/difference.ts';
import type { BuildGroup } from './build-groups.ts';
import type { Built } from './build-job.ts';
import { EXIT, Refusal } from './exit.ts';
import { withGauge } from './gauge-option.ts';
import { wrapped } from './lines.ts';
import { loadJob } from './load.ts';
import { predictionText } from './prediction-text.ts';
import type { RunOptions, Surroundings } from './run-prediction.ts';
import type { Say } from './verbs.ts';
import { writeTogether } from './write-together.ts';

export interface BuildOptions {
  /** Where the folder of each job goes. */
  readonly out: string;
  readonly groups: ReadonlySet<BuildGroup>;
  readonly json: boolean;
  readonly version: string;
}

/** Builds every job in memory first, then writes each folder whole; with several, tells their difference. */
export async function buildVerb(
  paths: readonly string[],
  { out, groups, json, version }: BuildOptions,
  options: RunOptions,
  around: Surroundings,
  say: Say,
): Promise<number> {
  // The solids' library takes a moment to load; only this verb needs it.
  const { buildJob } = await import('./build-job.ts');
  const folders = paths.map((path) => join(out, fileNameOf(basename(path, extname(path)))));
  const twice = folders.find((folder, k) => folders.indexOf(folder) !== k);
  if (twice !== undefined)
    throw new Refusal(`two jobs would be written to ${twice}; rename one job file`);
  const built: Built[] = [];
  for (const path of paths)
    built.push(await buildJob(loadJob(path), withGauge(options, path), version, around, groups));
  if (json) {
    const told = built.map(({ job, prediction, files, missing }, k) => ({
      job: job.name,
      file: paths[k]!,
      ...writeTogether(folders[k]!, files),
      wrote: files.map(({ name }) => name),
      missing,
      needs: prediction.needs.map(({ name, chance, chanceSe }) => ({ name, chance, chanceSe })),
    }));
    say(JSON.stringify({ json: 1, built: told }, null, 2));
    return EXIT.good;
  }
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

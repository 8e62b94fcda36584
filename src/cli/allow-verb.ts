import { allowances } from '../advise/allow/allow.ts';
import { COMMON_GAUGES, shopGauges } from '../advise/allow/gauges.ts';
import type { Wish } from '../advise/allow/yields.ts';
import type { Variants } from '../job/variants.ts';
import { readShopFile } from '../job/file/read-file.ts';
import { allowJson } from './allow-json.ts';
import { allowText } from './allow-text.ts';
import { told, type Tell } from './compare-verb.ts';
import { EXIT } from './exit.ts';
import { loadVariants } from './load.ts';
import type { Say } from './verbs.ts';

export interface AllowVerbOptions {
  readonly seed: number;
  readonly trials: number;
  readonly json: boolean;
  /** Wished share, 0..1; null: what the job calls good enough. */
  readonly share: number | null;
  /** That so many blanks all come out good; null: each need by itself. */
  readonly of: number | null;
}

/** How large each thing that is off may be for the needs of a job. */
export async function allowVerb(
  path: string,
  { seed, trials, json, share, of }: AllowVerbOptions,
  tell: Tell,
  say: Say,
): Promise<number> {
  const variants = loadVariants(path);
  const { job } = variants.whole;
  const wished = share ?? job.goodEnoughShare;
  const wish: Wish =
    of === null
      ? { kind: 'each-need', share: wished }
      : { kind: 'all-of', partCount: of, share: wished };
  const found = await told(allowances(job, { seed, trials }, wish), tell);
  const gauges = [...shopGauges(writtenGauges(variants)), ...COMMON_GAUGES];
  say(json ? allowJson(found, gauges, { seed, trials }) : allowText(found, gauges, trials, seed));
  return EXIT.good;
}

/** Those of the shop file, or what the job says instead. */
function writtenGauges({ files, written }: Variants): Readonly<Record<string, unknown>> {
  const name = written(['shop']);
  const bytes = typeof name === 'string' ? files.get(name) : undefined;
  const shop =
    typeof name === 'string' && bytes !== undefined
      ? readShopFile({ name, bytes }).sound?.gauges
      : undefined;
  const own = written(['gauges']);
  return { ...shop, ...(typeof own === 'object' ? own : {}) };
}

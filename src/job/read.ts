import { invariant } from '../num/invariant.ts';
import type { Result } from '../num/result.ts';
import { faulty, ok } from '../num/result.ts';
import type { Fault, Note, Place } from './fault.ts';
import { inReadingOrder } from './fault.ts';
import type { NamedBytes } from './file/bytes.ts';
import type { Places } from './file/places.ts';
import { valuePlace } from './file/places.ts';
import type { ReadFile } from './file/read-file.ts';
import { readJobFile, readShopFile } from './file/read-file.ts';
import type { Holding } from './holding.ts';
import type { Job } from './job.ts';
import { measuredName, readMeasured } from './readings/measured-file.ts';
import { resolved, type Drawing } from './resolve/job.ts';
import { shopAsTheJobSaysIt } from './resolve/merge.ts';
import type { RawJob } from './schema/raw-job.ts';
import type { RawShop } from './schema/raw-shop.ts';

export type { Fault, Note } from './fault.ts';
export { faultText, noteText } from './fault.ts';
export type { NamedBytes } from './file/bytes.ts';

export interface ReadJob {
  readonly job: Job;
  readonly holding: Holding;
  /** What a person should know though nothing is wrong. */
  readonly notes: readonly Note[];
}

/**
 * The files that a job names, as they are written: relative to the job file; and the one beside the
 * shop file in which measured figures are kept, which need not be there. None when it cannot be read.
 */
export function filesNamedBy(jobFile: NamedBytes): readonly string[] {
  const { shop, front = [], back = [], program = {} } = readJobFile(jobFile).sound ?? {};
  const drawings = [...front, ...back].flatMap(({ outline }) => outline?.drawing ?? []);
  const programs = [program['front-up'], program['back-up']].flatMap((one) => one?.file ?? []);
  const shops = shop === undefined ? [] : [shop, measuredName(shop)];
  return [...new Set([...shops, ...drawings, ...programs])].filter((name) => name !== '');
}

/**
 * The job, or every fault of the job file and of the shop file that it names. `files` holds the named
 * files by the words of `filesNamedBy`; one that is not there counts as missing.
 */
export function readJob(
  jobFile: NamedBytes,
  files: ReadonlyMap<string, Uint8Array>,
): Result<ReadJob, Fault> {
  return readParsed(readJobFile(jobFile), jobFile.name, files, 'check');
}

/**
 * The same from a job file that is parsed. `drawing`: features and needs that were checked
 * already and have not changed need not be again.
 */
export function readParsed(
  job: ReadFile<RawJob>,
  jobName: string,
  files: ReadonlyMap<string, Uint8Array>,
  drawing: Drawing,
): Result<ReadJob, Fault> {
  if (job.sound === null) return faulty(job.faults);
  const shop = shopOf(job.sound, job.places, jobName, files);
  const places = bothPlaces(job.places, shop.places);
  const touched = new Set([...job.touched, ...shop.touched]);
  const spoilt = new Set([...job.spoilt, ...shop.spoilt]);
  const parts = shopAsTheJobSaysIt(shop.sound ?? {}, job.sound, places, touched);
  const measured = measuredBeside(job.sound.shop, jobName, files);
  const names = {
    features: job.names.features,
    cutters: [...new Set([...shop.names.cutters, ...job.names.cutters])],
  };
  const result = resolved({
    job: job.sound,
    shop: shop.sound,
    parts,
    drawings: files,
    measured: {
      sources: measured.sources,
      heights: measured.heights,
      shopFile: shop.file,
      resurfaced: parts.bed?.resurfaced === undefined ? null : String(parts.bed.resurfaced),
    },
    places,
    touched,
    spoilt,
    names,
    drawing,
  });
  const order = [jobName, shop.file, measured.file];
  const faults = inReadingOrder(
    [...job.faults, ...shop.faults, ...measured.faults, ...result.faults],
    order,
  );
  if (faults.length > 0) return faulty(faults);
  invariant(result.job !== null, 'a job without faults could not be made out');
  invariant(
    result.job.features.every(({ cutter }) => cutter.diameterMm > 0),
    'the stand-in for an unknown cutter was let through',
  );
  return ok({
    job: result.job,
    holding: result.holding,
    notes: inReadingOrder(result.notes, order),
  });
}

type KnownShop = ReadFile<RawShop> & { readonly file: string };

function shopOf(
  job: Partial<RawJob>,
  places: Places,
  jobName: string,
  files: ReadonlyMap<string, Uint8Array>,
): KnownShop {
  const none = (faults: readonly Fault[]): KnownShop => ({
    file: '',
    sound: null,
    places: { start: new Map(), entries: new Map() },
    faults,
    touched: new Set(),
    spoilt: new Set(),
    names: { features: [], cutters: [] },
  });
  if (job.shop === undefined) return none([]);
  const at: Place = valuePlace(places, job, 'shop');
  const bytes = files.get(job.shop);
  if (bytes === undefined)
    return none([
      {
        ...at,
        message: `the shop file ${job.shop} is not there`,
        instead: 'write its place from this file, or make one with flipwright new',
      },
    ]);
  const file = besideJob(jobName, job.shop);
  return { file, ...readShopFile({ name: file, bytes }) };
}

function measuredBeside(
  shop: string | undefined,
  jobName: string,
  files: ReadonlyMap<string, Uint8Array>,
) {
  const name = shop === undefined ? '' : measuredName(shop);
  const bytes = files.get(name);
  const file = besideJob(jobName, name);
  return bytes === undefined
    ? { file, sources: [], heights: null, faults: [] }
    : { file, ...readMeasured({ name: file, bytes }) };
}

/** What messages call a file that is named from the job file. */
export function besideJob(jobName: string, path: string): string {
  const folder = /^.*[/\\]/.exec(jobName)?.[0] ?? '';
  return /^([/\\]|[A-Za-z]:)/.test(path) ? path : folder + path;
}

const bothPlaces = (a: Places, b: Places): Places => ({
  start: new Map([...a.start, ...b.start]),
  entries: new Map([...a.entries, ...b.entries]),
});

import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { faultText, filesNamedBy, readJob } from '../../src/job/read.ts';
import type { Job, Stops } from '../../src/job/job.ts';

/** A job file of the repository, read with the files it names. */
export function readFromDisk(path: string, name = path) {
  const bytes = readFileSync(path);
  const files = new Map<string, Uint8Array>();
  for (const named of filesNamedBy({ name, bytes })) {
    const found = ifThere(join(dirname(path), named));
    if (found !== null) files.set(named, found);
  }
  return readJob({ name, bytes }, files);
}

function ifThere(path: string): Uint8Array | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}

/** A job and its shop given as text. */
export function readTexts(job: string, shop: string) {
  const bytes = (text: string) => new TextEncoder().encode(text);
  return readJob({ name: 'job.yaml', bytes: bytes(job) }, new Map([['shop.yaml', bytes(shop)]]));
}

/** The job of those texts; fails with its faults when there are any. */
export function jobOf(job: string, shop: string): Job {
  const read = readTexts(job, shop);
  if (!read.ok) throw new Error(read.faults.map(faultText).join('\n'));
  return read.value.job;
}

/** The stops of a job that is located by them. */
export function onStops(job: Job | null): Stops {
  if (job?.locating !== 'stops') throw new Error('the job is not located by stops');
  return job.stops;
}

/** The faults of those texts, as they are printed. */
export function faultsOf(job: string, shop: string): readonly string[] {
  const read = readTexts(job, shop);
  return read.ok ? [] : read.faults.map(faultText);
}

import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { placedForStops } from '../jig/own-place.ts';
import { faultText } from '../job/fault.ts';
import type { Job } from '../job/job.ts';
import { filesNamedBy, readJob, type ReadJob } from '../job/read.ts';
import { readMeasured, type MeasuredSource } from '../job/readings/measured-file.ts';
import { measuredText } from '../job/readings/measured-text.ts';
import { variantsOf, type Variants } from '../job/variants.ts';
import { withDialled } from './correction-warning.ts';
import { EXIT, Refusal } from './exit.ts';

/** Larger files are not job files; reading them whole would only use up memory. */
const MAX_BYTES = 4_000_000;
/** Programs and drawings of a job are longer: some millions of lines. */
const MAX_NAMED_BYTES = 64_000_000;

/** Reads a job file and the files it names, from disk, with the offsets kept beside it that hold. @throws Refusal with every fault found. */
export function loadJob(path: string): ReadJob {
  const read = readFrom(path, (_name, bytes) => bytes);
  return { ...read, job: withDialled(path, read.job) };
}

/** The job as it would be without some of what was measured of its shop, and with nothing dialled in. */
export function jobWithout(path: string, isLeftOut: (source: MeasuredSource) => boolean): Job {
  return readFrom(path, (name, bytes) => {
    if (!name.endsWith('.measured.yaml')) return bytes;
    const { sources, heights } = readMeasured({ name, bytes });
    const kept = sources.filter((source) => !isLeftOut(source));
    return kept.length === 0 ? null : new TextEncoder().encode(measuredText(kept, [], heights));
  }).job;
}

/** The job, to be read again with changes; kept offsets count where they hold. @throws Refusal with every fault found. */
export function loadVariants(path: string): Variants {
  const { jobFile, files } = filesSeen(path, (_name, bytes) => bytes);
  sound(path, readJob(jobFile, files));
  const variants = variantsOf(jobFile, files);
  const dialled = (read: ReadJob): ReadJob => ({
    ...read,
    job: withDialled(path, placed(read).job),
  });
  return {
    ...variants,
    whole: dialled(variants.whole),
    read: (edits) => {
      const read = variants.read(edits);
      return read.ok ? { ok: true, value: dialled(read.value) } : read;
    },
  };
}

function readFrom(
  path: string,
  seen: (name: string, bytes: Uint8Array) => Uint8Array | null,
): ReadJob {
  const { jobFile, files } = filesSeen(path, seen);
  return sound(path, readJob(jobFile, files));
}

/** Where stops can be made, when the job leaves its place on the bed open. */
const placed = (read: ReadJob): ReadJob => ({ ...read, job: placedForStops(read.job) });

function filesSeen(path: string, seen: (name: string, bytes: Uint8Array) => Uint8Array | null) {
  const jobFile = { name: path, bytes: bytesOf(path) };
  const files = new Map<string, Uint8Array>();
  for (const name of filesNamedBy(jobFile)) {
    const found = bytesIfThere(resolve(dirname(path), name), MAX_NAMED_BYTES);
    const kept = found === null ? null : seen(name, found);
    if (kept !== null) files.set(name, kept);
  }
  return { jobFile, files };
}

function sound(path: string, read: ReturnType<typeof readJob>): ReadJob {
  if (read.ok) return placed(read.value);
  const count = read.faults.length;
  const head = count === 1 ? '1 thing is wrong' : `${count} things are wrong`;
  const text = [`${path}: ${head}`, ...read.faults.map(faultText)].join('\n');
  throw new Refusal(text, EXIT.badInput, read.faults);
}

/** A job file and the files that it names, as paths; the job alone when it cannot be read. */
export function filesOf(path: string): readonly string[] {
  try {
    const named = filesNamedBy({ name: path, bytes: bytesOf(path) });
    return [path, ...named.map((name) => resolve(dirname(path), name))];
  } catch (error) {
    if (error instanceof Refusal) return [path];
    throw error;
  }
}

function bytesOf(path: string): Uint8Array {
  const found = bytesIfThere(path, MAX_BYTES);
  if (found === null) {
    throw new Refusal(`${path}: no such file; name a job file, or write one with "flipwright new"`);
  }
  return found;
}

function bytesIfThere(path: string, mostBytes: number): Uint8Array | null {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'ENOTDIR') return null;
    if (code === 'EISDIR') throw new Refusal(`${path}: is a folder; name a file in it`);
    throw new Refusal(`${path}: cannot be read (${code ?? 'unknown reason'})`);
  }
  if (bytes.length > mostBytes) {
    throw new Refusal(
      `${path}: ${bytes.length} bytes; no such file here has more than ${mostBytes}`,
    );
  }
  return bytes;
}

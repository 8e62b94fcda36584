import { readFileSync } from 'node:fs';
import type { Result } from '../num/result.ts';
import { faultText, type Fault } from '../job/fault.ts';
import type { NamedBytes } from '../job/file/bytes.ts';
import type { Find } from '../job/readings/shop-parts.ts';
import { Refusal } from './exit.ts';

/** Files of readings are a page long; this is room for thousands of rows. */
const MAX_BYTES = 1_000_000;

/** Bytes of a file that need not be there. @throws Refusal when it is there and cannot be read. */
export const find: Find = (path) => {
  try {
    const bytes = readFileSync(path);
    if (bytes.length <= MAX_BYTES) return bytes;
    throw new Refusal(`${path}: ${bytes.length} bytes; at most ${MAX_BYTES} are read`);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'ENOTDIR') return null;
    if (code === 'EISDIR') throw new Refusal(`${path}: is a folder; name a file in it`);
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${path}: cannot be read (${code ?? 'unknown reason'})`);
  }
};

/** A file that somebody named. @throws Refusal when it is not there. */
export function named(path: string): NamedBytes {
  const bytes = find(path);
  if (bytes === null) throw new Refusal(`${path}: no such file`);
  return { name: path, bytes };
}

/** What was read. @throws Refusal with every fault. */
export function valueOf<T>(path: string, read: Result<T, Fault>): T {
  if (read.ok) return read.value;
  const count = read.faults.length;
  const head = count === 1 ? '1 thing is wrong' : `${count} things are wrong`;
  throw new Refusal([`${path}: ${head}`, ...read.faults.map(faultText)].join('\n'));
}

/** The day it is here, as files write it. */
export function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

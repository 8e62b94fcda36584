import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { benchOf, type Bench } from '../../src/advise/variant.ts';
import { faultText, filesNamedBy, readJob } from '../../src/job/read.ts';
import { variantsOf, type Variants } from '../../src/job/variants.ts';

/** A job file of the repository and the files it names. */
export function variantsFromDisk(path: string): Variants {
  const bytes = readFileSync(path);
  const files = new Map<string, Uint8Array>();
  for (const named of filesNamedBy({ name: path, bytes })) {
    try {
      files.set(named, readFileSync(join(dirname(path), named)));
    } catch {
      // A file of measured figures need not be there.
    }
  }
  return variantsOf({ name: path, bytes }, files);
}

/** A job and its shop given as text. */
export function variantsOfTexts(job: string, shop: string): Variants {
  const bytes = (text: string) => new TextEncoder().encode(text);
  const jobFile = { name: 'job.yaml', bytes: bytes(job) };
  const files = new Map([['shop.yaml', bytes(shop)]]);
  const read = readJob(jobFile, files);
  if (!read.ok) throw new Error(read.faults.map(faultText).join('\n'));
  return variantsOf(jobFile, files);
}

export const aBench = (variants: Variants, trials = 2000, seed = 1): Bench =>
  benchOf(variants, { seed, trials }, () => null);

/** What a generator returns, whatever it tells on the way. */
export function toTheEnd<T>(run: Generator<unknown, T>): T {
  for (;;) {
    const next = run.next();
    if (next.done === true) return next.value;
  }
}

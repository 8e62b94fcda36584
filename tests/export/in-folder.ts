import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Gives `use` a new folder, and clears it away. */
export function inFolder<T>(use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'flipwright-'));
  try {
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Missing on a contributor's machine: skipped. In CI nothing is missing. */
export const skippedWithout = (isThere: boolean): boolean =>
  !isThere && process.env['CI'] === undefined;

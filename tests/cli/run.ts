import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const MAIN = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
export const JIGS = join(import.meta.dirname, '..', '..', 'jigs');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built program with plain node, as a user would (npm test builds it first). */
export function flipwright(words: readonly string[], cwd: string = process.cwd()): Ran {
  const run = spawnSync(process.execPath, [MAIN, ...words], { cwd, encoding: 'utf8' });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

/** An empty folder for one test, gone afterwards. */
export function withFolder<T>(use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'flipwright-'));
  try {
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { invariant } from '../num/invariant.ts';
import { Refusal } from './exit.ts';

export interface NewFile {
  /** A plain file name, no folders. */
  readonly name: string;
  readonly bytes: Uint8Array | string;
}

export interface Written {
  readonly folder: string;
  readonly replaced: readonly string[];
  /** Other files that were already there; an older build may have left them. */
  readonly others: readonly string[];
}

/**
 * Writes all files into a folder, or none: each under a temporary name first, then all renamed; if
 * anything fails the folder is put back as it was.
 * @throws Refusal when the folder is a link or cannot be written.
 */
export function writeTogether(folder: string, files: readonly NewFile[]): Written {
  for (const { name } of files) {
    invariant(/^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u.test(name), `file name ${name}`);
  }
  refuseLinks(folder);
  refuseFilesAbove(folder);
  const before = existsSync(folder) ? readdirSync(folder) : null;
  const staged: string[] = [];
  const swapped: { readonly name: string; readonly old: string | null }[] = [];
  const path = (name: string): string => join(folder, name);
  try {
    mkdirSync(folder, { recursive: true });
    for (const { name, bytes } of files) {
      staged.push(`.${name}.new`);
      // A stale one, or a link that somebody planted, must not be written through.
      rmSync(path(`.${name}.new`), { force: true });
      writeFileSync(path(`.${name}.new`), bytes, { flag: 'wx' });
    }
    for (const { name } of files) {
      const old = existsSync(path(name)) ? `.${name}.old` : null;
      if (old !== null) renameSync(path(name), path(old));
      swapped.push({ name, old });
      renameSync(path(`.${name}.new`), path(name));
    }
  } catch (error) {
    for (const { name, old } of swapped.reverse()) {
      rmSync(path(name), { force: true });
      if (old !== null) renameSync(path(old), path(name));
    }
    for (const name of staged) rmSync(path(name), { force: true });
    if (before === null) rmSync(folder, { recursive: true, force: true });
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown reason';
    throw new Refusal(`${folder}: nothing was written (${code}); free the folder or name another`);
  }
  const replaced = swapped.filter(({ old }) => old !== null);
  for (const { old } of replaced) rmSync(path(old!), { force: true, recursive: true });
  const names = files.map(({ name }) => name);
  return {
    folder,
    replaced: replaced.map(({ name }) => name),
    others: (before ?? []).filter((name) => !names.includes(name) && !name.startsWith('.')),
  };
}

/** The folders above must be folders too, as far as they are there. */
function refuseFilesAbove(folder: string): void {
  const above = dirname(folder);
  if (above === folder) return;
  if (!existsSync(above)) {
    refuseFilesAbove(above);
    return;
  }
  if (!statSync(above).isDirectory()) throw new Refusal(`${above}: is a file, not a folder`);
}

function refuseLinks(folder: string): void {
  if (!existsSync(folder)) return;
  const stat = lstatSync(folder);
  if (stat.isSymbolicLink())
    throw new Refusal(`${folder}: is a link to another place; name a real folder`);
  if (!stat.isDirectory()) throw new Refusal(`${folder}: is a file, not a folder; name another`);
}

import { existsSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve } from 'node:path';
import type { Edit } from '../job/edit.ts';
import type { Variants } from '../job/variants.ts';
import { Refusal } from './exit.ts';
import { writeTogether } from './write-together.ts';

export interface NamedEdits {
  /** Without its ending. */
  readonly name: string;
  readonly edits: readonly Edit[];
}

/**
 * Writes job files with changes into a folder, all or none and never over one that is there; shop, drawings and programs are
 * named from there.
 * @throws Refusal when one is there, or the folder cannot be written.
 */
export function writeVariants(
  variants: Variants,
  folder: string,
  all: readonly NamedEdits[],
): readonly string[] {
  const moved = movedPaths(variants, folder);
  const files = all.map(({ name, edits }) => ({
    name: `${name}.yaml`,
    bytes: variants.text([...edits, ...moved.filter(({ path }) => !isOver(path, edits))], edits),
  }));
  for (const { name } of files)
    if (existsSync(join(folder, name)))
      throw new Refusal(`${join(folder, name)}: is already there; name another folder`);
  writeTogether(folder, files);
  return files.map(({ name }) => join(folder, name));
}

const isOver = (path: Edit['path'], edits: readonly Edit[]): boolean =>
  edits.some((edit) => edit.path.every((key, k) => path[k] === key));

/** Every file that the job names, from the new folder. */
function movedPaths(variants: Variants, folder: string): readonly Edit[] {
  const from = dirname(variants.jobFile.name);
  const places: Edit['path'][] = [
    ['shop'],
    ...(['front', 'back'] as const).flatMap((face) =>
      listed(variants.written([face])).map((_, k) => [face, k, 'outline', 'drawing'] as const),
    ),
    ...(['front-up', 'back-up'] as const).map((placing) => ['program', placing, 'file'] as const),
  ];
  return places.flatMap((path): readonly Edit[] => {
    const named = variants.written(path);
    if (typeof named !== 'string' || isAbsolute(named)) return [];
    const there = relative(resolve(folder), resolve(from, named)).replaceAll('\\', '/');
    return there === named ? [] : [{ path, value: there }];
  });
}

const listed = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

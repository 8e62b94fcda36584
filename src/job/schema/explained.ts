import { probablyMeant } from './closest.ts';
import { jobRows, shopRows, type KeyRow } from './key-rows.ts';

/** What a person who asked about a key is told. */
export type Explained =
  | { readonly kind: 'found'; readonly rows: readonly KeyRow[] }
  | { readonly kind: 'unknown'; readonly meant: string | null };

/**
 * Keys that a person may mean: the whole path (`blank.bevel`, `front[2].at`), its end (`bevel`, `at`), or
 * one wrongly typed. Keys that say the same in several places come once for each place.
 */
export function explained(asked: string): Explained {
  const rows = [...jobRows(), ...shopRows()];
  const wanted = plain(asked);
  const whole = rows.filter(({ path }) => plain(path) === wanted);
  if (whole.length > 0) return { kind: 'found', rows: whole };
  const ends = rows.filter(({ path }) => plain(path).endsWith(`.${wanted}`));
  if (ends.length > 0) return { kind: 'found', rows: ends };
  const names = rows.flatMap(({ path }) => [plain(path), plain(path).split('.').at(-1)!]);
  return { kind: 'unknown', meant: probablyMeant(wanted, [...new Set(names)]) };
}

/** Without brackets, the marks of one's own names, and a colon at the end: as a person types it. */
const plain = (path: string): string =>
  path
    .trim()
    .toLowerCase()
    .replace(/\[[^\]]*\]/g, '')
    .replace(/\.<[^>]*>/g, '')
    .replace(/\s*:\s*/g, '.')
    .replace(/\.+$/, '');

/** The keys that stand at the top of each file. */
export const topKeys = (): readonly KeyRow[] =>
  [...jobRows(), ...shopRows()].filter(({ path }) => !/[.[]/.test(path));

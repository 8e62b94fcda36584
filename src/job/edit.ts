import type { Place } from './fault.ts';
import { startOf, type Entry, type Holder, type Places } from './file/places.ts';

/** What may be written as the value of a key: plain YAML. */
export type Plain = string | number | readonly Plain[] | { readonly [key: string]: Plain };

/** One change of a job file: what a path of keys is to say; null takes the key out. */
export interface Edit {
  readonly path: readonly (string | number)[];
  readonly value: Plain | null;
}

/**
 * The change in the words of the file: `stops: {touch-height: 12}`, or `take out stops: height`; in a list, what stands before it
 * and stays is `…`.
 */
export function editText({ path, value }: Edit): string {
  const [outer, ...inner] = path;
  if (value === null) return `take out ${path.join(': ')}`;
  const written = inner.reduceRight<string>(
    (text, key) =>
      typeof key === 'number' ? `[${'…, '.repeat(key)}${text}]` : `{${key}: ${text}}`,
    flowText(value),
  );
  return `${outer}: ${written}`;
}

/** Several changes in the words of the file, those within one key together; what is taken out comes last. */
export function editsText(edits: readonly Edit[]): string {
  const tree: Record<string, Plain> = {};
  const rest: Edit[] = [];
  for (const edit of edits) {
    const isKeyed = edit.path.every((key) => typeof key === 'string');
    if (edit.value === null || !isKeyed || !putInto(tree, edit.path, edit.value)) rest.push(edit);
  }
  const kept = Object.entries(tree).map(([key, value]) => `${key}: ${flowText(value)}`);
  return [...kept, ...rest.map(editText)].join('; ');
}

/** False where something that is no mapping is in the way. */
function putInto(tree: Record<string, Plain>, path: readonly string[], value: Plain): boolean {
  const [key, ...inner] = path;
  if (inner.length === 0) {
    tree[key!] = value;
    return true;
  }
  const below = tree[key!];
  if (below !== undefined && (typeof below !== 'object' || Array.isArray(below))) return false;
  const copy: Record<string, Plain> = { ...(below as Readonly<Record<string, Plain>> | undefined) };
  if (!putInto(copy, inner, value)) return false;
  tree[key!] = copy;
  return true;
}

/** A value as it is written on one line. */
export function flowText(value: Plain): string {
  if (typeof value !== 'object') return String(value);
  if (Array.isArray(value)) return `[${(value as readonly Plain[]).map(flowText).join(', ')}]`;
  const entries = Object.entries(value).map(([key, one]) => `${key}: ${flowText(one)}`);
  return `{${entries.join(', ')}}`;
}

/**
 * Puts the changes into plain values that nobody else holds, and where they stand into `places`: where the nearest
 * thing round them stands in the file. What is on the way and not there is made.
 */
export function applyEdits(root: Holder, places: Places, edits: readonly Edit[]): void {
  for (const { path, value } of edits) {
    const last = path.at(-1)!;
    let holder: Holder | null = root;
    for (const key of path.slice(0, -1)) {
      if (holder === null) break;
      holder = itemOf(holder, key) ?? (value === null ? null : put(holder, places, key, {}));
    }
    if (holder === null) continue;
    if (value !== null) put(holder, places, last, structuredClone(value));
    else if (Array.isArray(holder)) (holder as unknown[]).splice(Number(last), 1);
    else Reflect.deleteProperty(holder, last);
  }
}

function itemOf(holder: Holder, key: string | number): Holder | null {
  const found = Object.hasOwn(holder, key)
    ? (holder as Readonly<Record<string | number, unknown>>)[key]
    : null;
  return typeof found === 'object' && found !== null ? (found as Holder) : null;
}

function put<T>(holder: Holder, places: Places, key: string | number, value: T): T {
  const place = startOf(places, holder);
  const entries = places.entries.get(holder) ?? new Map<string, Entry>();
  entries.set(String(key), { key: place, value: place });
  places.entries.set(holder, entries);
  standAt(value, places, place);
  (holder as Record<string | number, unknown>)[key] = value;
  return value;
}

/** Everything within a value stands where it does. */
function standAt(value: unknown, places: Places, place: Place): void {
  if (typeof value !== 'object' || value === null) return;
  places.start.set(value, place);
  const entries = Object.keys(value).map((key) => [key, { key: place, value: place }] as const);
  places.entries.set(value, new Map(entries));
  for (const one of Object.values(value)) standAt(one, places, place);
}

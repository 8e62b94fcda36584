import type { Fault } from '../fault.ts';
import type { Schema } from '../schema/build.ts';
import type { RawJob } from '../schema/raw-job.ts';
import type { RawShop } from '../schema/raw-shop.ts';
import { JOB, PART_OF_JOB } from '../schema/schema-job.ts';
import { PART_OF_SHOP, SHOP } from '../schema/schema-shop.ts';
import { validated } from '../schema/validate.ts';
import type { NamedBytes } from './bytes.ts';
import { textOf } from './bytes.ts';
import type { Holder, Places } from './places.ts';
import { noPlaces, valuePlace } from './places.ts';
import { readYaml } from './yaml.ts';

/** One file by itself: what is sound of it, and every fault of its form. */
export interface ReadFile<T> {
  /** Null when nothing of it could be made out. */
  readonly sound: Partial<T> | null;
  readonly places: Places;
  readonly faults: readonly Fault[];
  readonly touched: ReadonlySet<object>;
  readonly spoilt: ReadonlySet<object>;
  /** Names of everything that was written, sound or not. */
  readonly names: { readonly features: readonly string[]; readonly cutters: readonly string[] };
}

export const readJobFile = (file: NamedBytes): ReadFile<RawJob> =>
  readOnce(jobs, file, () => readFile<RawJob>(file, 'flipwright', JOB, PART_OF_JOB));

export const readShopFile = (file: NamedBytes): ReadFile<RawShop> =>
  readOnce(shops, file, () => readFile<RawShop>(file, 'flipwright-shop', SHOP, PART_OF_SHOP));

/** A job file whose values were changed after it was read. */
export function checkedJob(root: Holder, places: Places): ReadFile<RawJob> {
  return {
    ...validated<RawJob, Partial<RawJob>>(JOB, PART_OF_JOB, root, places),
    places,
    names: namesOf(root),
  };
}

/** The same bytes are asked for again: which files a job names, the job itself, its variants. */
type Known<T> = WeakMap<Uint8Array, { readonly name: string; readonly read: ReadFile<T> }>;
const jobs: Known<RawJob> = new WeakMap();
const shops: Known<RawShop> = new WeakMap();

function readOnce<T>(
  known: Known<T>,
  { name, bytes }: NamedBytes,
  read: () => ReadFile<T>,
): ReadFile<T> {
  const before = known.get(bytes);
  if (before?.name === name) return before.read;
  const now = read();
  known.set(bytes, { name, read: now });
  return now;
}

/** The version of both formats that is read here. */
const VERSION = 1;

function readFile<T>(
  file: NamedBytes,
  versionKey: 'flipwright' | 'flipwright-shop',
  whole: Schema<T>,
  part: Schema<Partial<T>>,
): ReadFile<T> {
  const nothing = (faults: readonly Fault[]): ReadFile<T> => ({
    sound: null,
    places: noPlaces(),
    faults,
    touched: new Set(),
    spoilt: new Set(),
    names: { features: [], cutters: [] },
  });
  const text = textOf(file);
  if (!text.ok) return nothing(text.faults);
  const { root, places, faults } = readYaml(file.name, text.value);
  if (root === null) return nothing(faults);
  const other = wrongFormat(root, places, versionKey);
  if (other !== null) return nothing([other]);
  const names = namesOf(root);
  const checked = validated(whole, part, root, places);
  return { ...checked, places, faults: [...faults, ...checked.faults], names };
}

const namesOf = (root: Holder): ReadFile<unknown>['names'] => ({
  features: [...namesIn(root, 'front'), ...namesIn(root, 'back')],
  cutters: namesIn(root, 'cutters'),
});

/** Another version or another kind of file: then nothing else about it is worth saying. */
function wrongFormat(
  root: Holder,
  places: Places,
  versionKey: 'flipwright' | 'flipwright-shop',
): Fault | null {
  const otherKey = versionKey === 'flipwright' ? 'flipwright-shop' : 'flipwright';
  const kinds = { flipwright: 'job', 'flipwright-shop': 'shop' } as const;
  const has = (key: string): boolean => Object.hasOwn(root, key);
  if (has(otherKey) && !has(versionKey))
    return {
      ...valuePlace(places, root, otherKey),
      message: `this is a ${kinds[otherKey]} file where a ${kinds[versionKey]} file is wanted`,
      instead: `name the ${kinds[versionKey]} file, which begins with ${versionKey}: ${VERSION}`,
    };
  const version = (root as Readonly<Record<string, unknown>>)[versionKey];
  if (typeof version !== 'number' || version === VERSION) return null;
  const isNewer = version > VERSION;
  return {
    ...valuePlace(places, root, versionKey),
    message: `${versionKey}: ${version} is ${isNewer ? 'newer than' : 'no version'} this program reads, which is ${VERSION}`,
    instead: isNewer
      ? `update flipwright, or write ${versionKey}: ${VERSION}`
      : `write ${versionKey}: ${VERSION}`,
  };
}

function namesIn(root: Holder, key: string): readonly string[] {
  const list = (root as Readonly<Record<string, unknown>>)[key];
  if (!Array.isArray(list)) return [];
  return list.flatMap((item: unknown) => {
    if (typeof item !== 'object' || item === null || !('name' in item)) return [];
    return typeof item.name === 'string' ? [item.name] : [];
  });
}

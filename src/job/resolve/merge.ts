import type { Holder, Places } from '../file/places.ts';
import type { RawCutter, RawShopParts } from '../schema/raw-shop.ts';

/** Groups of keys that a job may override key by key; anything else is replaced as a whole. */
const GROUPS = /^(machine|machine\.above-the-tip|bed|touch-off|touch-off\.[^.]+|gauges|shims)$/;
const PARTS = [
  'units',
  'machine',
  'bed',
  'cutters',
  'touch-off',
  'gauges',
  'hold-downs',
  'shims',
] as const;

/**
 * The shop as this job sees it: the shop file with what the job says instead. Places go along, so
 * that every value still knows the file and line it was written in.
 */
export function shopAsTheJobSaysIt(
  shop: RawShopParts,
  job: RawShopParts,
  places: Places,
  touched: Set<object>,
): RawShopParts {
  const merge = (path: string, under: Holder, over: Holder): Holder => {
    const merged: Record<string, unknown> = Object.fromEntries(Object.entries(under));
    const entries = new Map(places.entries.get(under));
    for (const [key, value] of Object.entries(over)) {
      const inner = path === '' ? key : `${path}.${key}`;
      const below = (under as Readonly<Record<string, unknown>>)[key];
      const both = isMapping(value) && isMapping(below);
      if (both && GROUPS.test(inner)) merged[key] = merge(inner, below, value);
      else merged[key] = inner === 'cutters' && Array.isArray(below) ? byName(below, value) : value;
      const entry = places.entries.get(over)?.get(key);
      if (entry !== undefined && !(both && GROUPS.test(inner))) entries.set(key, entry);
    }
    places.entries.set(merged, entries);
    const start = places.start.get(over) ?? places.start.get(under);
    if (start !== undefined) places.start.set(merged, start);
    if (touched.has(under) || touched.has(over)) touched.add(merged);
    return merged;
  };
  return merge('', only(shop, places, touched), only(job, places, touched)) as RawShopParts;
}

/** The shop's keys of a file, without the rest. */
function only(file: RawShopParts, places: Places, touched: Set<object>): Holder {
  const kept = PARTS.filter((key) => file[key] !== undefined).map(
    (key) => [key, file[key]] as const,
  );
  const part = Object.fromEntries(kept);
  const entries = places.entries.get(file);
  if (entries !== undefined) places.entries.set(part, entries);
  const start = places.start.get(file);
  if (start !== undefined) places.start.set(part, start);
  if (touched.has(file)) touched.add(part);
  return part;
}

/** A cutter of the job takes the place of the shop's cutter of that name; others are added. */
function byName(shop: readonly unknown[], job: unknown): unknown {
  if (!Array.isArray(job)) return job;
  const mine = job as readonly RawCutter[];
  const names = new Set(mine.map((cutter) => cutter.name));
  return [...(shop as readonly RawCutter[]).filter((cutter) => !names.has(cutter.name)), ...mine];
}

const isMapping = (value: unknown): value is Holder =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

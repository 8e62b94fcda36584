import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Fault, Place } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import type { Places } from '../file/places.ts';
import { noPlaces, valuePlace } from '../file/places.ts';
import { readJobFile, readShopFile } from '../file/read-file.ts';
import { shopAsTheJobSaysIt } from '../resolve/merge.ts';
import type { RawShopParts } from '../schema/raw-shop.ts';

/** Bytes of a file by its path from where the program runs; null when it is not there. */
export type Find = (path: string) => Uint8Array | null;

export interface ShopParts {
  readonly shopName: string;
  readonly shopFile: string;
  /** What the shop file says by itself. */
  readonly own: RawShopParts;
  /** The same with what the job says instead. */
  readonly parts: RawShopParts;
  readonly places: Places;
  /** Every file that was read, in the order in which faults are told. */
  readonly files: readonly string[];
  /** Path of a file that is named at a place. */
  readonly fileOf: (path: string, namedAt: Place) => string;
}

/** The shop of a shop file, or as a job file sees its own, by itself: nothing else of the job is looked at. */
export function shopPartsOf(file: NamedBytes, find: Find): Result<ShopParts, Fault> {
  if (isShop(file.bytes)) {
    const shop = readShopFile(file);
    if (shop.sound === null || shop.faults.length > 0) return faulty(shop.faults);
    return ok({
      shopName: shop.sound.name ?? 'shop',
      shopFile: file.name,
      own: shop.sound,
      parts: shop.sound,
      places: shop.places,
      files: [file.name],
      fileOf: (path, { file: from }) => beside(from, path),
    });
  }
  const job = readJobFile(file);
  if (job.sound === null || job.faults.length > 0) return faulty(job.faults);
  const named = job.sound.shop ?? '';
  const path = beside(file.name, named);
  const bytes = find(path);
  if (bytes === null)
    return faulty([
      {
        ...valuePlace(job.places, job.sound, 'shop'),
        message: `the shop file ${named} is not there`,
        instead: 'write its place from this file, or make one with flipwright new',
      },
    ]);
  const shop = readShopFile({ name: path, bytes });
  if (shop.sound === null || shop.faults.length > 0) return faulty(shop.faults);
  const places = noPlaces();
  for (const known of [job.places, shop.places]) {
    known.start.forEach((place, key) => places.start.set(key, place));
    known.entries.forEach((entry, key) => places.entries.set(key, entry));
  }
  return ok({
    shopName: shop.sound.name ?? 'shop',
    shopFile: path,
    own: shop.sound,
    parts: shopAsTheJobSaysIt(shop.sound, job.sound, places, new Set()),
    places,
    files: [file.name, path],
    fileOf: (other, { file: from }) => beside(from, other),
  });
}

/** Path of a file that another names. */
export function beside(file: string, path: string): string {
  const folder = /^.*[/\\]/.exec(file)?.[0] ?? '';
  return /^([/\\]|[A-Za-z]:)/.test(path) ? path : folder + path;
}

const isShop = (bytes: Uint8Array): boolean =>
  /^flipwright-shop\s*:/m.test(new TextDecoder().decode(bytes.subarray(0, 4000)));

import type { Result } from '../num/result.ts';
import { ok } from '../num/result.ts';
import type { Fault } from '../job/fault.ts';
import { readReadings, type ReadingsFile } from '../job/readings/readings-file.ts';
import { beside, shopPartsOf } from '../job/readings/shop-parts.ts';
import type { RawShopParts } from '../job/schema/raw-shop.ts';
import { find, named, today, valueOf } from './find.ts';

/** A readings file, with the gauges of the shop it names, or of the shop that is handed in. @throws Refusal with every fault. */
export function loadReadings(path: string, shopFile: string | null = null): ReadingsFile {
  const gaugesOf = (shop: string | null): Result<RawShopParts, Fault> => {
    const from = shop === null ? shopFile : beside(path, shop);
    if (from === null) return ok({});
    const read = shopPartsOf(named(from), find);
    return read.ok ? ok(read.value.parts) : read;
  };
  return valueOf(path, readReadings(named(path), today(), gaugesOf));
}

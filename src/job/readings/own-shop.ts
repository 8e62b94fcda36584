import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Fault } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import { bedOf } from '../resolve/bed.ts';
import type { Context } from '../resolve/context.ts';
import { cuttersOf } from '../resolve/cutters.ts';
import { machineOf } from '../resolve/machine.ts';
import type { Shop } from '../shop.ts';
import { shopPartsOf, type Find, type ShopParts } from './shop-parts.ts';

/** The shop as its own file has it: no job says otherwise, and nothing measured stands in. */
export function ownShop(context: Context, { own, shopName }: ShopParts): Shop {
  return {
    name: shopName,
    units: own.units ?? 'mm',
    machine: machineOf(context, own.machine ?? {}).machine,
    bed: bedOf(context, own.bed ?? {}),
    cutters: cuttersOf(context, own.cutters ?? []),
  };
}

/** The same of a shop file, with every fault of it. */
export function ownShopOf(file: NamedBytes, find: Find): Result<Shop, Fault> {
  const read = shopPartsOf(file, find);
  if (!read.ok) return read;
  const context: Context = {
    places: read.value.places,
    faults: [],
    notes: [],
    touched: new Set(),
    spoilt: new Set(),
    drawings: new Map(),
    gauges: read.value.own.gauges ?? {},
  };
  const shop = ownShop(context, read.value);
  return context.faults.length > 0 ? faulty(context.faults) : ok(shop);
}

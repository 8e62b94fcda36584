import { bedOf } from '../resolve/bed.ts';
import type { Context } from '../resolve/context.ts';
import { cuttersOf } from '../resolve/cutters.ts';
import { machineOf } from '../resolve/machine.ts';
import type { Shop } from '../shop.ts';
import type { ShopParts } from './shop-parts.ts';

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

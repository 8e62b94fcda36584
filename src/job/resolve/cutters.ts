import { DEFAULTS } from '../defaults.ts';
import type { Cutter } from '../job.ts';
import { suggestion } from '../schema/closest.ts';
import type { RawCutter } from '../schema/raw-shop.ts';
import type { At, Context } from './context.ts';
import { fault } from './context.ts';
import { mmOrNull } from './lengths.ts';
import { sizeAt } from './sized.ts';
import { assumed, gapAt, times } from './spread.ts';
import { veeOf } from './vee.ts';

export function cuttersOf(context: Context, raws: readonly RawCutter[]): readonly Cutter[] {
  const cutters: Cutter[] = [];
  for (const raw of raws) {
    if (cutters.some((cutter) => cutter.name === raw.name))
      fault(
        context,
        [raw, 'name'],
        `the cutter ${raw.name} is here twice`,
        'give each its own name',
      );
    const cutter = cutterOf(context, raw);
    if (cutter !== null) cutters.push(cutter);
  }
  return cutters;
}

function cutterOf(context: Context, raw: RawCutter): Cutter | null {
  const size = sizeAt(context, [raw, 'diameter'], raw.diameter, 'shop');
  if (size === null) return null;
  // What is written is how far the diameter is off; each wall is off by half of it.
  const radiusError =
    size.spread === null
      ? assumed(DEFAULTS.cutterRadius)
      : { ...times(size.spread, 0.5), text: `${size.spread.text} on the diameter` };
  return {
    name: raw.name,
    kind: raw.kind,
    diameterMm: size.nominalMm,
    radiusError,
    vee: veeOf(context, raw, size.nominalMm),
    pushOff: gapAt(context, [raw, 'push-off'], raw['push-off'], DEFAULTS.pushOff, 'push-off'),
    fluteMm: mmOrNull(raw.flute),
    stickOutMm: mmOrNull(raw['stick-out']),
    speedPerMin: raw.speed ?? null,
    feedMmPerMin: raw.feed ?? null,
    stepMm: mmOrNull(raw.step),
  };
}

/** The cutters of the shop, and every name that was written for one, also of those that are faulty. */
export interface Drawer {
  readonly cutters: readonly Cutter[];
  readonly names: readonly string[];
  /** False when the shop file could not be read: then no name is unknown. */
  readonly isKnown: boolean;
}

/** The cutter of that name; null when there is none (a fault) or when its own entry is faulty. */
export function cutterNamed(context: Context, drawer: Drawer, at: At, name: string): Cutter | null {
  const found = drawer.cutters.find((cutter) => cutter.name === name);
  if (found !== undefined) return found;
  if (drawer.isKnown && !drawer.names.includes(name))
    fault(
      context,
      at,
      `the cutter ${name} is not in the shop file`,
      suggestion(name, drawer.names, 'cutter there'),
    );
  return null;
}

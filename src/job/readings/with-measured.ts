import type { Distribution } from '../../num/distribution.ts';
import { bedSurface } from '../bed-surface.ts';
import type { Bed, BedHeights, Cutter, Shop } from '../shop.ts';
import type { Spread } from '../job.ts';
import { note, type Context } from '../resolve/context.ts';
import type { PlacedHeights, PlacedSource } from './measured-file.ts';
import { figureText } from './measured-text.ts';

/** What decides whether a measured figure still counts. */
export interface Standing {
  readonly sources: readonly PlacedSource[];
  /** Heights of the bed; they count when its measured lean and unevenness do. */
  readonly heights: PlacedHeights | null;
  /** The shop file; what another file (the job) says goes before what was measured. */
  readonly shopFile: string;
  /** When the board was last changed: what was measured of the bed before is void. */
  readonly resurfaced: string | null;
}

/**
 * The shop with what was measured in place of what was assumed or written before it. A figure that
 * the shop file by now states otherwise than when it was measured, or of a bed that has been changed
 * since, is left out with a note.
 */
export function withMeasured(context: Context, shop: Shop, standing: Standing): Shop {
  let known = shop;
  for (const source of standing.sources) {
    const { of } = source;
    const place = { file: source.file, line: source.line, column: 1 };
    if (
      of.startsWith('bed.') &&
      standing.resurfaced !== null &&
      source.measured < standing.resurfaced
    ) {
      note(
        context,
        place,
        `${of} was measured on ${source.measured}, before the board was re-surfaced on ${standing.resurfaced}, so it does not count; flipwright bed measures again`,
      );
      continue;
    }
    const changed = replaced(known, of, (spread) => {
      if (spread.origin.kind === 'assumed') return spreadOf(source, spread);
      if (spread.origin.file !== standing.shopFile) return spread;
      if (spread.text === source.was) return spreadOf(source, spread);
      note(
        context,
        place,
        `${of} was measured when the shop file said ${source.was}; it says ${spread.text} by now, and that counts`,
      );
      return spread;
    });
    if (changed === null) note(context, place, `${of} is measured, and the shop has no such thing`);
    else known = changed;
  }
  return withHeights(known, standing);
}

const OF_THE_BED = ['bed.lean-x', 'bed.lean-y', 'bed.unevenness'];

/**
 * The bed place by place, when its lean and unevenness count as they were measured with it. Its lean is
 * then exactly that of the readings' plane: what is not known is in the height of each place.
 */
function withHeights(shop: Shop, { heights, sources }: Standing): Shop {
  if (heights === null) return shop;
  const counts = OF_THE_BED.every((of) => {
    const source = sources.find((one) => one.of === of);
    const spread = spreadIn(shop, of);
    return (
      source !== undefined &&
      source.measured === heights.measured &&
      spread?.origin.kind === 'stated' &&
      spread.origin.file === source.file
    );
  });
  return counts ? { ...shop, bed: bedWith(shop.bed, heights) } : shop;
}

/** A bed with heights place by place in place of lean and unevenness. */
export function bedWith(bed: Bed, heights: BedHeights): Bed {
  const { plane } = bedSurface(heights);
  const exactly = (spread: Spread, value: number): Spread => ({
    ...spread,
    distribution: { kind: 'exactly', value },
  });
  return {
    ...bed,
    heights,
    leanX: exactly(bed.leanX, plane.perX),
    leanY: exactly(bed.leanY, plane.perY),
  };
}

type Change = (spread: Spread) => Spread;

/** What a figure of the shop is written as, or assumed to be; null for what the shop does not have. */
export function spreadIn(shop: Shop, of: string): Spread | null {
  let found: Spread | null = null;
  replaced(shop, of, (spread) => {
    found = spread;
    return spread;
  });
  return found;
}

function replaced(shop: Shop, of: string, change: Change): Shop | null {
  const { machine, bed } = shop;
  switch (of) {
    case 'machine.lean':
      return { ...shop, machine: { ...machine, lean: change(machine.lean) } };
    case 'machine.scale-x':
      return { ...shop, machine: { ...machine, scaleX: change(machine.scaleX) } };
    case 'machine.scale-y':
      return { ...shop, machine: { ...machine, scaleY: change(machine.scaleY) } };
    case 'machine.cutter-lean-x':
      return { ...shop, machine: { ...machine, cutterLeanX: change(machine.cutterLeanX) } };
    case 'machine.cutter-lean-y':
      return { ...shop, machine: { ...machine, cutterLeanY: change(machine.cutterLeanY) } };
    case 'machine.repeatability':
      return { ...shop, machine: { ...machine, repeatability: change(machine.repeatability) } };
    case 'bed.lean-x':
      return { ...shop, bed: { ...bed, leanX: change(bed.leanX) } };
    case 'bed.lean-y':
      return { ...shop, bed: { ...bed, leanY: change(bed.leanY) } };
    case 'bed.unevenness':
      return { ...shop, bed: { ...bed, unevenness: change(bed.unevenness) } };
    default:
      return withRadius(shop, of, change);
  }
}

function withRadius(shop: Shop, of: string, change: Change): Shop | null {
  const name = /^cutters\.(.+)\.radius$/.exec(of)?.[1];
  if (!shop.cutters.some((cutter) => cutter.name === name)) return null;
  const changed = (cutter: Cutter): Cutter =>
    cutter.name === name ? { ...cutter, radiusError: change(cutter.radiusError) } : cutter;
  return { ...shop, cutters: shop.cutters.map(changed) };
}

function spreadOf(source: PlacedSource, instead: Spread): Spread {
  const { of, value, sd, dof, measured, file, line } = source;
  return {
    distribution: distributionOf(value, sd, dof),
    recurs: instead.recurs,
    origin: { kind: 'stated', file, line },
    text: `${figureText(of, value)}, sd ${figureText(of, sd)}, measured ${measured}`,
  };
}

const distributionOf = (mean: number, sd: number, dof: number): Distribution =>
  sd === 0
    ? { kind: 'exactly', value: mean }
    : Number.isFinite(dof)
      ? { kind: 'scaled-t', mean, scale: sd, dof }
      : { kind: 'normal', mean, sd };

import { sdOf } from '../../num/spread-of.ts';
import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Point } from '../../plane/point.ts';
import type { Fault } from '../fault.ts';
import { inReadingOrder } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import { type Context, fault } from '../resolve/context.ts';
import { bedOf } from '../resolve/bed.ts';
import { cuttersOf } from '../resolve/cutters.ts';
import { mm, pointMm } from '../resolve/lengths.ts';
import { ownShop } from './own-shop.ts';
import type { RawBed, RawShopParts } from '../schema/raw-shop.ts';
import type { Cutter, Shop, Units } from '../shop.ts';
import { readSized } from '../text/sized.ts';
import type { BedReading } from './bed-heights.ts';
import { heightGaugeOf, placeAt, readingsOf } from './height-readings.ts';
import { shopPartsOf, type Find } from './shop-parts.ts';

/** What the shop file says of the bed and of what can be done about it, mm, bed frame. */
export interface BedCare {
  /** The shop as its own file has it, nothing measured: what measured figures stand in for. */
  readonly shop: Shop;
  readonly shopFile: string;
  readonly units: Units;
  readonly board: { readonly xMm: number; readonly yMm: number; readonly thickMm: number };
  readonly readings: readonly BedReading[];
  /** The file that the readings' lines are of. */
  readonly readIn: string;
  readonly measured: string | null;
  /** The sd of one reading, and where that comes from. */
  readonly gaugeSdMm: number;
  readonly gaugeText: string;
  readonly screws: readonly Point<'bed'>[];
  readonly shims: readonly AtHand[];
  readonly cutters: readonly Cutter[];
  /** How far the machine goes; null when the shop file does not say. */
  readonly travelMm: { readonly x: number; readonly y: number } | null;
}

/** A kind of shim at hand; `count` null: nobody said how many. */
export interface AtHand {
  readonly name: string;
  readonly thickMm: number;
  readonly sdMm: number;
  readonly count: number | null;
}

/** Part of its thickness by which a shim of no stated spread is off; of office paper (geometry.md section 6). */
const SHIM_SHARE = 0.05;

/**
 * The bed of a shop file, or of the shop that a job file names, with its height readings; `today` is
 * written as 2026-11-20. Every fault of the files, or that the readings are void.
 */
export function readBedCare(file: NamedBytes, find: Find, today: string): Result<BedCare, Fault> {
  const read = shopPartsOf(file, find);
  if (!read.ok) return read;
  const { parts, places, files, fileOf, shopFile } = read.value;
  const context: Context = {
    places,
    faults: [],
    notes: [],
    touched: new Set(),
    spoilt: new Set(),
    drawings: new Map(),
    gauges: parts.gauges ?? {},
  };
  const bed: RawBed = parts.bed ?? {};
  const desk = {
    context,
    find: (path: string, namedAt: Parameters<typeof fileOf>[1]) => find(fileOf(path, namedAt)),
  };
  const { spoilboard: board } = bedOf(context, bed);
  const found = readingsOf(desk, bed, today);
  const gauge = heightGaugeOf(context, bed.heights);
  const care: BedCare = {
    shop: ownShop(context, read.value),
    shopFile,
    units: parts.units ?? 'mm',
    board,
    readings: found.readings,
    readIn: found.readIn,
    measured: bed.heights?.measured === undefined ? null : String(bed.heights.measured),
    gaugeSdMm: gauge.sdMm,
    gaugeText: gauge.text,
    screws: screwsOf(context, bed, board),
    shims: shimsOf(parts),
    cutters: cuttersOf(context, parts.cutters ?? []),
    travelMm:
      parts.machine?.travel === undefined
        ? null
        : { x: mm(parts.machine.travel[0]), y: mm(parts.machine.travel[1]) },
  };
  return context.faults.length > 0 ? faulty(inReadingOrder(context.faults, files)) : ok(care);
}

function screwsOf(context: Context, bed: RawBed, board: BedCare['board']): BedCare['screws'] {
  const screws = (bed.screws ?? []).map(pointMm);
  screws.forEach(({ x, y }, index) => {
    if (x >= 0 && y >= 0 && x <= board.xMm && y <= board.yMm) return;
    fault(
      context,
      placeAt(context, bed.screws!, index),
      `a bed screw at ${x}, ${y} is not on the board`,
      `write 0 to ${board.xMm} and 0 to ${board.yMm}`,
    );
  });
  return screws;
}

function shimsOf(parts: RawShopParts): readonly AtHand[] {
  return Object.entries(parts.shims ?? {}).flatMap(([name, raw]) => {
    const written = typeof raw === 'object' ? raw.thick : raw;
    const read = readSized(String(written));
    if (!read.ok) return [];
    const { nominalMm, spread } = read.value;
    const sdMm =
      spread === null ? (SHIM_SHARE * nominalMm) / Math.sqrt(3) : sdOf(spread.distribution);
    return [
      {
        name,
        thickMm: nominalMm,
        sdMm,
        count: (typeof raw === 'object' ? raw.count : null) ?? null,
      },
    ];
  });
}

import { invariant } from '../../num/invariant.ts';
import type { Fault, Note } from '../fault.ts';
import { checkDrawing, checkJob } from '../check/job.ts';
import type { Places } from '../file/places.ts';
import { GOOD_ENOUGH_SHARE } from '../defaults.ts';
import type { Holding } from '../holding.ts';
import type { Blank, Job, Locating, Shop } from '../job.ts';
import type { RawJob } from '../schema/raw-job.ts';
import type { RawShop, RawShopParts } from '../schema/raw-shop.ts';
import { readChance } from '../text/share.ts';
import { bedOf } from './bed.ts';
import { blankOf } from './blank.ts';
import type { Context } from './context.ts';
import { fault, startPlace, statedAt } from './context.ts';
import type { Drawer } from './cutters.ts';
import { cuttersOf } from './cutters.ts';
import { edgesOf } from './edges.ts';
import { featuresOf } from './features.ts';
import { goesOn } from './goes-on.ts';
import { holdOf } from './hold.ts';
import { holdingOf } from './holding.ts';
import { jigOf } from './jig.ts';
import { pointMm } from './lengths.ts';
import { locatingOf } from './locating.ts';
import { machineOf } from './machine.ts';
import { needsOf } from './needs.ts';
import { placeOnBed } from './on-bed.ts';
import { partsOf } from './parts.ts';
import { copiesOf, featureOfCopy, needOfCopy, zeroOfCopies } from './repeat.ts';
import { withMeasured, type Standing } from '../readings/with-measured.ts';
import { zerosOf } from './zero.ts';

/** Features and needs are checked, unless they were already and lie in a blank of the same size as then. */
export type Drawing = 'check' | { readonly checkedIn: Blank };

/** What was sound in the two files. */
export interface SoundFiles {
  readonly job: Partial<RawJob>;
  /** Null when the shop file is missing or cannot be read. */
  readonly shop: Partial<RawShop> | null;
  /** The shop as this job sees it. */
  readonly parts: RawShopParts;
  readonly drawings: ReadonlyMap<string, Uint8Array>;
  /** What was measured of the shop, and when it counts. */
  readonly measured: Standing;
  readonly places: Places;
  readonly touched: ReadonlySet<object>;
  readonly spoilt: ReadonlySet<object>;
  /** Every name that was written, also of what is faulty otherwise: those names are not unknown. */
  readonly names: { readonly features: readonly string[]; readonly cutters: readonly string[] };
  readonly drawing: Drawing;
}

export interface Resolved {
  /** Null only when there are faults. */
  readonly job: Job | null;
  readonly holding: Holding;
  readonly faults: readonly Fault[];
  readonly notes: readonly Note[];
}

/** The job that the files describe, as far as they are sound, with every fault of meaning. */
export function resolved(files: SoundFiles): Resolved {
  const { job: raw, parts, places, touched, spoilt } = files;
  const [faults, notes]: [Fault[], Note[]] = [[], []];
  const context: Context = {
    places,
    faults,
    notes,
    touched,
    spoilt,
    drawings: files.drawings,
    gauges: parts.gauges ?? {},
  };
  const { shop, drawer, known } = shopOf(context, files);
  const edges = edgesOf(context, raw.blank ?? NO_BLANK, shop.machine, shop.cutters);
  const blank =
    raw.blank === undefined ? null : blankOf(context, raw.blank, raw['between-placings'], edges);
  const thickMm = blank?.thickMm ?? Infinity;
  const bench = { tools: parts['touch-off'] ?? {}, isKnown: files.shop !== null, machine: known };
  const features = [
    ...featuresOf(context, raw.front ?? [], 'front', thickMm, drawer),
    ...featuresOf(context, raw.back ?? [], 'back', thickMm, drawer),
  ];
  const locating = locatingOf(context, raw, thickMm, drawer);
  const stops = locating?.locating === 'stops' ? locating.stops : null;
  const zero = raw.zero === undefined ? null : zerosOf(context, raw.zero, bench);
  const needs = needsOf(context, raw.needs ?? []);
  const batch = partsOf(context, raw.parts ?? {});
  const hold = holdOf(context, raw.hold ?? {});
  const jig = jigOf(raw.jig ?? {});
  const onBed = onBedOf(context, raw, shop, blank, locating);
  const copies = copiesOf(context, raw.repeat);
  const holding = holdingOf(context, {
    raw,
    parts,
    drawer,
    blank,
    bed: shop.bed,
    features,
    copies,
  });
  const { names } = files;
  const found = { raw, shop, blank, features, locating, stops, zero, needs, onBed, copies, names };
  checkJob(context, found);
  if (!isChecked(files.drawing, blank)) checkDrawing(context, found);
  if (faults.length > 0 || blank === null || locating === null || zero === null)
    return { job: null, holding, faults, notes };
  if (raw.turn === undefined || raw.name === undefined || onBed === null)
    return { job: null, holding, faults, notes };
  const written = features.map(({ feature }) => feature);
  const job: Job = {
    name: raw.name,
    goodEnoughShare: goodEnoughShare(raw['good-enough']),
    onBed,
    blank,
    first: raw.first ?? 'front',
    features: written.flatMap((feature) => copies.map((copy) => featureOfCopy(feature, copy))),
    turn: raw.turn,
    ...locating,
    zero: {
      frontUp: zeroOfCopies(zero.frontUp, copies, written),
      backUp: zeroOfCopies(zero.backUp, copies, written),
    },
    needs: [
      ...needs.flatMap(({ need }) => copies.map((copy) => needOfCopy(need, copy))),
      ...goesOn(locating),
    ],
    parts: batch,
    hold,
    jig,
    shop,
  };
  return { job, holding, faults, notes };
}

const isChecked = (drawing: Drawing, blank: Blank | null): boolean =>
  drawing !== 'check' &&
  blank !== null &&
  (['widthMm', 'heightMm', 'thickMm'] as const).every(
    (key) => drawing.checkedIn[key] === blank[key],
  );

/** Stands in for a blank that could not be made out, so that the shop is still looked at. */
const NO_BLANK: NonNullable<Partial<RawJob>['blank']> = { size: [1, 1, 1] };

function shopOf(context: Context, files: SoundFiles) {
  const { parts } = files;
  const known = machineOf(context, groupOf(context, files, 'machine', 'travel: [600, 400, 90]'));
  const bed = bedOf(
    context,
    groupOf(context, files, 'bed', 'spoilboard: {size: [600, 400], thickness: 18}'),
  );
  const cutters = cuttersOf(context, parts.cutters ?? []);
  const written: Shop = {
    name: files.shop?.name ?? 'shop',
    units: parts.units ?? 'mm',
    machine: known.machine,
    bed,
    cutters,
  };
  const shop = withMeasured(context, written, files.measured);
  const drawer: Drawer = {
    cutters: shop.cutters,
    names: files.names.cutters,
    isKnown: files.shop !== null,
  };
  return { shop, drawer, known };
}

/** A group of the shop; an empty one, with its fault, when neither file has it. */
function groupOf<K extends 'machine' | 'bed'>(
  context: Context,
  { parts, shop }: SoundFiles,
  key: K,
  example: string,
): NonNullable<RawShopParts[K]> {
  const group = parts[key];
  if (group !== undefined) return group;
  const empty: NonNullable<RawShopParts[K]> = {};
  // What the group lacks is not told once more.
  (context.touched as Set<object>).add(empty);
  if (shop !== null && !context.touched.has(shop))
    fault(
      context,
      startPlace(context, shop),
      `${key} is missing`,
      `write ${key}: {${example}} in the shop file`,
    );
  return empty;
}

function goodEnoughShare(written: RawJob['good-enough']): number {
  if (written === undefined) return GOOD_ENOUGH_SHARE;
  const read = readChance(String(written));
  invariant(read.ok, 'the schema let good-enough through');
  return read.value.value;
}

function onBedOf(
  context: Context,
  raw: Partial<RawJob>,
  shop: Shop,
  blank: Blank | null,
  locating: Locating | null,
): Job['onBed'] | null {
  const written = raw['on-bed'];
  if (written !== undefined)
    return { value: pointMm(written), origin: statedAt(context, [raw, 'on-bed']) };
  return blank === null || locating === null ? null : placeOnBed(shop.bed, blank, locating);
}

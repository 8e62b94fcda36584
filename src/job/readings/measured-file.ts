import { hypotenuse } from '../../num/elementary.ts';
import type { Fault } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import { textOf } from '../file/bytes.ts';
import { startOf, valuePlace, type Holder, type Places } from '../file/places.ts';
import { readYaml } from '../file/yaml.ts';
import type { Schema } from '../schema/build.ts';
import {
  about,
  keyed,
  listOf,
  number,
  optional,
  text,
  threeOf,
  whole,
  written,
} from '../schema/build.ts';
import { suggestion } from '../schema/closest.ts';
import type { Written } from '../schema/raw-shop.ts';
import * as q from '../schema/quantities.ts';
import { date } from '../schema/schema-bed-care.ts';
import { validated } from '../schema/validate.ts';
import { mm, pointMm } from '../resolve/lengths.ts';
import type { BedHeights } from '../shop.ts';
import { LENGTH } from '../text/length.ts';
import type { Quantity } from '../text/quantity.ts';
import { SLOPE } from '../text/slope.ts';
import { ok } from '../../num/result.ts';

/** A figure of the shop that was measured: it stands in for `was`, which somebody wrote or a table assumed. */
export interface MeasuredSource {
  /** Keys of the shop file: `machine.lean`, `bed.lean-x`, `cutters.flat 6.radius`. */
  readonly of: string;
  /** In mm or as a tangent. */
  readonly value: number;
  readonly sd: number;
  /** Degrees of freedom of the sd; infinite when it is known from the gauge. */
  readonly dof: number;
  readonly measured: string;
  readonly because: string;
  readonly was: string;
}

/** Heights of the bed, and the lean and unevenness that they stand in for. */
export interface MeasuredHeights extends BedHeights {
  readonly was: string;
}

/** The same with the place where they stand. */
export interface PlacedHeights extends MeasuredHeights {
  readonly file: string;
  readonly line: number;
}

/** Where a measured figure stands. */
export interface PlacedSource extends MeasuredSource {
  readonly file: string;
  readonly line: number;
}

/** What can be measured, and in what. */
const MEASURABLE: Readonly<Record<string, Quantity>> = {
  'machine.lean': SLOPE,
  'machine.scale-x': SLOPE,
  'machine.scale-y': SLOPE,
  'machine.cutter-lean-x': SLOPE,
  'machine.cutter-lean-y': SLOPE,
  'machine.repeatability': LENGTH,
  'bed.lean-x': SLOPE,
  'bed.lean-y': SLOPE,
  'bed.unevenness': LENGTH,
};

/** Slopes or lengths; null for what cannot be measured. */
export const quantityOf = (of: string): Quantity | null =>
  Object.hasOwn(MEASURABLE, of)
    ? MEASURABLE[of]!
    : /^cutters\..+\.radius$/.test(of)
      ? LENGTH
      : null;

/** What the measured file beside a shop file is called. */
export const measuredName = (shop: string): string =>
  shop.replace(/\.ya?ml$/i, '') + '.measured.yaml';

interface RawMeasured {
  readonly 'flipwright-measured': number;
  readonly sources: readonly RawSource[];
  readonly 'bed-heights'?: RawBedHeights | undefined;
}

interface RawBedHeights {
  readonly points: readonly (readonly [Written, Written, Written])[];
  readonly gauge: Written;
  readonly uneven: Written;
  readonly reach: Written;
  readonly measured: Written;
  readonly because: string;
  readonly was: string;
}

interface RawSource {
  readonly of: string;
  readonly value: Written;
  readonly sd: Written;
  readonly dof?: number | undefined;
  readonly measured: Written;
  readonly because: string;
  readonly was: string;
}

const figure = (): Schema<Written> =>
  written('write a length such as 0.02 or a slope such as 0.12 per 200', (value) =>
    /\sper\s|deg|°/.test(value)
      ? SLOPE.read(value)
      : LENGTH.read(value).ok
        ? ok(null)
        : SLOPE.read(value),
  );

const SHAPE = {
  'flipwright-measured': whole(),
  sources: listOf(
    keyed<RawSource>({
      of: about(text(), 'what was measured', 'machine.lean'),
      value: figure(),
      sd: figure(),
      dof: optional(number('write a number of 1 or more', (n) => (n >= 1 ? null : 'is below 1'))),
      measured: date(),
      because: text(),
      was: text(),
    }),
  ),
  'bed-heights': optional(
    keyed<RawBedHeights>({
      points: listOf(threeOf(q.place())),
      gauge: q.place(),
      uneven: q.place(),
      reach: q.size(),
      measured: date(),
      because: text(),
      was: text(),
    }),
  ),
};
const MEASURED: Schema<RawMeasured> = keyed<RawMeasured>(SHAPE);
const PART: Schema<Partial<RawMeasured>> = keyed<Partial<RawMeasured>>({
  'flipwright-measured': optional(SHAPE['flipwright-measured']),
  sources: optional(SHAPE.sources),
  'bed-heights': SHAPE['bed-heights'],
});

/** What was measured, and every fault of the file; what is faulty is not among the sources. */
export function readMeasured(file: NamedBytes): {
  readonly sources: readonly PlacedSource[];
  readonly heights: PlacedHeights | null;
  readonly faults: readonly Fault[];
} {
  const nothing = { sources: [], heights: null };
  const text = textOf(file);
  if (!text.ok) return { ...nothing, faults: text.faults };
  const { root, places, faults } = readYaml(file.name, text.value);
  if (root === null) return { ...nothing, faults };
  const checked = validated<RawMeasured, Partial<RawMeasured>>(MEASURED, PART, root, places);
  const all: Fault[] = [...faults, ...checked.faults];
  const seen = new Set<string>();
  const sources = (checked.sound.sources ?? []).flatMap((raw): PlacedSource[] => {
    const holder = raw as unknown as Holder;
    const wrong = (key: keyof RawSource, message: string, instead: string): PlacedSource[] => {
      all.push({ ...valuePlace(places, holder, key), message, instead });
      return [];
    };
    const quantity = quantityOf(raw.of);
    if (quantity === null)
      return wrong(
        'of',
        `${raw.of} is not measured`,
        suggestion(raw.of, Object.keys(MEASURABLE), 'such figure'),
      );
    if (seen.has(raw.of)) return wrong('of', `${raw.of} is here twice`, 'keep the newer one');
    seen.add(raw.of);
    const [value, sd] = [quantity.read(String(raw.value)), quantity.read(String(raw.sd))];
    if (!value.ok)
      return wrong('value', `value ${raw.value} is not ${quantity.what}`, value.faults[0]!.instead);
    if (!sd.ok || sd.value.value < 0)
      return wrong(
        'sd',
        `sd ${raw.sd} is not ${quantity.what} of 0 or more`,
        'write what flipwright wrote',
      );
    const { line } = startOf(places, holder);
    return [
      {
        of: raw.of,
        value: value.value.value,
        sd: sd.value.value,
        dof: raw.dof ?? Infinity,
        measured: String(raw.measured),
        because: raw.because,
        was: raw.was,
        file: file.name,
        line,
      },
    ];
  });
  const raw = checked.sound['bed-heights'];
  const heights = raw === undefined ? null : heightsFrom(raw, file.name, places);
  if (heights !== null && (heights.points.length < FEWEST || isOnOneLine(heights)))
    all.push({
      file: file.name,
      line: heights.line,
      column: 1,
      message: `${heights.points.length} heights ${heights.points.length < FEWEST ? 'are too few for a bed' : 'on one line do not fix a bed'}`,
      instead: 'measure with flipwright bed again, or take bed-heights out',
    });
  return { sources, heights, faults: all };
}

/** Three fix a plane, and only a fourth shows that the bed is not one. */
const FEWEST = 4;

/** Whether no three of the places stand off one line by a hundredth of its length. */
function isOnOneLine({ points }: BedHeights): boolean {
  const from = points[0]!.at;
  const far = points.reduce((best, { at }) =>
    hypotenuse(at.x - from.x, at.y - from.y) > hypotenuse(best.at.x - from.x, best.at.y - from.y)
      ? { at, heightMm: 0 }
      : best,
  ).at;
  const [dx, dy] = [far.x - from.x, far.y - from.y];
  const square = dx * dx + dy * dy;
  return points.every(
    ({ at }) => Math.abs(dx * (at.y - from.y) - dy * (at.x - from.x)) <= 0.01 * square,
  );
}

function heightsFrom(raw: RawBedHeights, file: string, places: Places): PlacedHeights {
  return {
    points: raw.points.map(([x, y, height]) => ({ at: pointMm([x, y]), heightMm: mm(height) })),
    gaugeSdMm: mm(raw.gauge),
    unevenSdMm: mm(raw.uneven),
    reachMm: mm(raw.reach),
    measured: String(raw.measured),
    because: raw.because,
    was: raw.was,
    file,
    line: startOf(places, raw as unknown as Holder).line,
  };
}

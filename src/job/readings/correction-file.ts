import type { Fault } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import { textOf } from '../file/bytes.ts';
import { readYaml } from '../file/yaml.ts';
import type { Schema } from '../schema/build.ts';
import { mm, pointMm } from '../resolve/lengths.ts';
import { keyed, named, number, optional, pairOf, text, whole } from '../schema/build.ts';
import { place } from '../schema/quantities.ts';
import type { Written } from '../schema/raw-shop.ts';
import { date } from '../schema/schema-bed-care.ts';
import { validated } from '../schema/validate.ts';

/** Offsets to dial into the second placing's zero, machine axes, mm, and the set-up they hold for. */
export interface Correction {
  readonly measured: string;
  readonly turns: number;
  /** Where on the blank they bring the back onto the front; null: where the needs judge. */
  readonly at: { readonly x: number; readonly y: number } | null;
  readonly x: CorrectionAxis | null;
  readonly y: CorrectionAxis | null;
  readonly scheme: Readonly<Record<string, string>>;
}

export interface CorrectionAxis {
  readonly offsetMm: number;
  /** Half of the interval that holds the true offset 95 times in 100. */
  readonly half95Mm: number;
  /** The sd by the readings alone. */
  readonly readingMm: number;
  /** The sd of one length by caliper where each blank's own length is dialled in beside; null: it is not. */
  readonly calipered: number | null;
}

/** How many sd are half of a normal 95 % interval. */
const HALF_95 = 1.96;

/** What the correction beside a job file is called. */
export const correctionName = (job: string): string =>
  `${job.replace(/\.ya?ml$/i, '')}.correction.yaml`;

interface Raw {
  readonly 'flipwright-correction': number;
  readonly measured: Written;
  readonly turns: number;
  readonly at?: readonly [Written, Written] | undefined;
  readonly x?: RawAxis | undefined;
  readonly y?: RawAxis | undefined;
  readonly scheme: Readonly<Record<string, string>>;
}

interface RawAxis {
  readonly offset: Written;
  readonly 'good-to': Written;
  readonly reading?: Written | undefined;
  readonly calipered?: Written | undefined;
}

const axis = () =>
  optional(
    keyed<RawAxis>({
      offset: place(),
      'good-to': place(),
      reading: optional(place()),
      calipered: optional(place()),
    }),
  );
const SHAPE = {
  'flipwright-correction': whole(),
  measured: date(),
  turns: number('write how often it was turned over', (n) => (n >= 1 ? null : 'is below 1')),
  at: optional(pairOf(place())),
  x: axis(),
  y: axis(),
  scheme: named(text()),
};
const WHOLE: Schema<Raw> = keyed<Raw>(SHAPE);
const PART: Schema<Partial<Raw>> = keyed<Partial<Raw>>({
  'flipwright-correction': optional(SHAPE['flipwright-correction']),
  measured: optional(SHAPE.measured),
  turns: optional(SHAPE.turns),
  at: SHAPE.at,
  x: SHAPE.x,
  y: SHAPE.y,
  scheme: optional(SHAPE.scheme),
});

export function correctionText({ measured, turns, at, x, y, scheme }: Correction): string {
  const axisLines = (name: 'x' | 'y', one: CorrectionAxis | null): readonly string[] =>
    one === null
      ? []
      : [
          `${name}: { offset: ${round(one.offsetMm)}, good-to: ${round(one.half95Mm)}, reading: ${round(one.readingMm)}${one.calipered === null ? '' : `, calipered: ${round(one.calipered)}`} }`,
        ];
  return [
    "# Written by flipwright learn: add these to the second placing's zero, X right and Y away from you.",
    '# They hold for the set-up below and for no other.',
    'flipwright-correction: 1',
    `measured: ${measured}`,
    `turns: ${turns}`,
    ...(at === null ? [] : [`at: [${round(at.x)}, ${round(at.y)}]`]),
    ...axisLines('x', x),
    ...axisLines('y', y),
    'scheme:',
    ...Object.entries(scheme).map(([key, value]) => `  ${key}: ${JSON.stringify(value)}`),
    '',
  ].join('\n');
}

const round = (mm: number): string => String(Number(mm.toFixed(4)) + 0);

/** Null when the file is faulty. */
export function readCorrection(file: NamedBytes): {
  readonly correction: Correction | null;
  readonly faults: readonly Fault[];
} {
  const text = textOf(file);
  if (!text.ok) return { correction: null, faults: text.faults };
  const { root, places, faults } = readYaml(file.name, text.value);
  if (root === null) return { correction: null, faults };
  const checked = validated<Raw, Partial<Raw>>(WHOLE, PART, root, places);
  const all = [...faults, ...checked.faults];
  if (all.length > 0) return { correction: null, faults: all };
  const raw = checked.sound as Raw;
  const axisOf = (one: RawAxis | undefined): CorrectionAxis | null => {
    if (one === undefined) return null;
    const half95Mm = mm(one['good-to']);
    return {
      offsetMm: mm(one.offset),
      half95Mm,
      readingMm: one.reading === undefined ? half95Mm / HALF_95 : mm(one.reading),
      calipered: one.calipered === undefined ? null : mm(one.calipered),
    };
  };
  return {
    correction: {
      measured: String(raw.measured),
      turns: raw.turns,
      at: raw.at === undefined ? null : pointMm(raw.at),
      x: axisOf(raw.x),
      y: axisOf(raw.y),
      scheme: raw.scheme,
    },
    faults: [],
  };
}

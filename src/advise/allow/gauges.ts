import { readSpread } from '../../job/text/spread.ts';
import { LENGTH } from '../../job/text/length.ts';
import { SLOPE } from '../../job/text/slope.ts';
import { sdOf } from '../../num/spread-of.ts';
import type { Measure } from './groups.ts';

/** Something to measure or set with. */
export interface Gauge {
  readonly words: string;
  /** Standard deviation of its error in the unit of what is measured; null for what it cannot measure. `overMm`: the length of a lean. */
  readonly sdFor: (measure: Measure, overMm: number) => number | null;
  /** What it is good to, as written. */
  readonly goodTo: string;
  readonly from: 'shop' | 'common practice';
}

/** Half a width of a rectangle to its standard deviation. */
const SQRT3 = Math.sqrt(3);

const reads =
  (measures: readonly Measure[], halfMm: number): Gauge['sdFor'] =>
  (measure, overMm) => {
    if (!measures.includes(measure)) return null;
    // Of a diameter, half goes to each side.
    if (measure === 'diameter') return halfMm / SQRT3;
    return (isLean(measure) ? halfMm / overMm : halfMm) / SQRT3;
  };

const isLean = (measure: Measure): boolean => measure.endsWith('lean');

const practice = (words: string, halfMm: number, measures: readonly Measure[]): Gauge => ({
  words,
  sdFor: reads(measures, halfMm),
  goodTo: `±${halfMm} mm`,
  from: 'common practice',
});

const square = (words: string, per100: number): Gauge => ({
  words,
  sdFor: (measure) => (measure === 'lean' || measure === 'edge lean' ? per100 / 100 / SQRT3 : null),
  goodTo: `±${per100} per 100 mm`,
  from: 'common practice',
});

/**
 * What a shop may have, and how far it is off in common hands: common practice, no source (a caliper's 0.03 is that of DIN 862).
 * A lean is read at both ends of its length.
 */
export const COMMON_GAUGES: readonly Gauge[] = [
  practice('a 0.01 dial', 0.01, ['small length', 'swept lean', 'lean']),
  practice('a 0.02 dial', 0.02, ['small length', 'swept lean', 'lean']),
  practice('a micrometer', 0.005, ['diameter']),
  practice('a caliper', 0.03, ['length', 'diameter', 'edge lean', 'lean']),
  practice('feelers under a straightedge', 0.05, [
    'small length',
    'swept lean',
    'edge lean',
    'lean',
  ]),
  practice('a steel rule', 0.25, ['length', 'diameter', 'edge lean', 'lean']),
  practice('a tape', 0.5, ['length', 'lean']),
  practice('an edge finder', 0.01, ['touch']),
  practice('paper', 0.02, ['touch']),
  practice('a cutter at rest, by eye', 0.1, ['touch']),
  square("an engineer's square", 0.02),
  square("a joiner's square", 0.2),
];

/** Feelers that are sold, mm. */
const FEELERS = [0.02, 0.03, 0.04, 0.05, 0.08, 0.1, 0.15, 0.2, 0.3, 0.5] as const;

/** The thickest feeler that is within a gap; null when the gap is too fine for any. */
export const feelerFor = (gapMm: number): number | null =>
  FEELERS.findLast((feeler) => feeler <= gapMm + 1e-9) ?? null;

/** Gauges as a shop file names them, `caliper: ±0.03`, `square: 0.02 per 100`; others than lengths and leans are left out. */
export function shopGauges(written: Readonly<Record<string, unknown>>): readonly Gauge[] {
  return Object.entries(written).flatMap(([name, value]): readonly Gauge[] => {
    const text = String(value);
    const spread = /±|sd|\.\.|normal/.test(text) ? text : `±${text}`;
    const length = readSpread(LENGTH, spread);
    const called = { words: `your ${name}`, goodTo: spread, from: 'shop' as const };
    if (length.ok) {
      const half = sdOf(length.value.distribution) * SQRT3;
      return [{ ...called, goodTo: unitTold(spread), sdFor: reads(measuresOf(name), half) }];
    }
    const slope = readSpread(SLOPE, spread);
    if (!slope.ok) return [];
    const sd = sdOf(slope.value.distribution);
    return [{ ...called, sdFor: (measure) => (measure.endsWith('lean') ? sd : null) }];
  });
}

const unitTold = (text: string): string => (/[a-z"]/i.test(text) ? text : `${text} mm`);

function measuresOf(name: string): readonly Measure[] {
  if (/dial|indicator/i.test(name)) return ['small length', 'swept lean', 'lean'];
  if (/micrometer/i.test(name)) return ['diameter', 'small length'];
  if (/rule|tape/i.test(name)) return ['length', 'edge lean', 'lean'];
  return ['length', 'diameter', 'edge lean', 'lean'];
}

/** The coarsest gauge that would do for a standard deviation, and the finest that would not; either may be missing. */
export interface Fitting {
  readonly does: Gauge | null;
  readonly doesNot: Gauge | null;
}

/** Those of the shop come first among equals; null when nothing here measures it. */
export function gaugeFor(
  gauges: readonly Gauge[],
  measure: Measure,
  overMm: number,
  sd: number,
): Fitting | null {
  const fit = gauges.flatMap((gauge) => {
    const own = gauge.sdFor(measure, overMm);
    return own === null ? [] : [{ gauge, own }];
  });
  if (fit.length === 0) return null;
  const [does] = fit
    .filter(({ own }) => own <= sd)
    .toSorted((a, b) => b.own - a.own || first(a.gauge, b.gauge));
  const [doesNot] = fit
    .filter(({ own }) => own > sd)
    .toSorted((a, b) => a.own - b.own || first(a.gauge, b.gauge));
  return { does: does?.gauge ?? null, doesNot: doesNot?.gauge ?? null };
}

const first = (one: Gauge, other: Gauge): number =>
  Number(one.from !== 'shop') - Number(other.from !== 'shop');

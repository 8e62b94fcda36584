import { leastSquares } from '../num/least-squares.ts';
import { invariant } from '../num/invariant.ts';
import { nullSpace } from '../num/null-space.ts';
import type { Point } from '../plane/point.ts';
import type { Estimate } from './estimate.ts';
import { readingSd } from './estimate.ts';

/**
 * Walls of one comb, mm: between a front slot and a back slot, and between that and the next front slot,
 * in the direction of its axis, seen from the front. `sd` is that of one wall.
 * Source: t1 = w + m - g, t2 = w - m - g with the offset m and the growth g of the slots, so neither the
 * caliper's zero nor the cutter's size is in m (bench practice, section 2).
 */
export interface Comb {
  readonly along: 'x' | 'y';
  readonly at: Point<'blank'>;
  readonly t1Mm: number;
  readonly t2Mm: number;
  readonly sdMm: number;
}

/** One turn over: a fresh set of combs each. */
export interface TurnRead {
  readonly combs: readonly Comb[];
}

/** How far the back lies off the front along one axis: `shift + perX x + perY y` about the middle of the combs. */
export interface AxisField {
  readonly axis: 'x' | 'y';
  readonly middle: Point<'blank'>;
  /** At the middle of the combs, mm. */
  readonly shift: Estimate;
  /** Tangents; null where it was taken as nil because the readings do not tell it. */
  readonly perX: Estimate | null;
  readonly perY: Estimate | null;
  /** Shift, perX and perY of each turn over by itself. */
  readonly turns: readonly Three[];
  /** Covariance of their means by the readings alone. */
  readonly read: readonly Three[];
  readonly readDof: number;
  readonly combCount: number;
}

export type Three = readonly [shift: number, perX: number, perY: number];

/**
 * How far the back lies off the front along one axis, from all turns over; null without combs along it.
 * With combs at three places not on one line both slopes are found, with two at least the one across,
 * the other taken as nil. Where each turn's combs tell everything by themselves each is fitted by
 * itself, so that the turns' own scatter is seen; else the slopes are common to all.
 */
export function fieldOf(turns: readonly TurnRead[], axis: 'x' | 'y'): AxisField | null {
  const sets = turns
    .map(({ combs }) => combs.filter(({ along }) => along === axis))
    .filter((combs) => combs.length > 0);
  const all = sets.flat();
  if (all.length === 0) return null;
  const middle = {
    x: all.reduce((sum, { at }) => sum + at.x, 0) / all.length,
    y: all.reduce((sum, { at }) => sum + at.y, 0) / all.length,
  };
  const columns = columnsFor(all, middle, axis);
  const groups = sets.every((set) => tells(set, middle, columns))
    ? sets.map((set) => [set])
    : [sets];
  const fits = groups.map((group) => fitOf(group, middle, columns));
  const squares = fits.reduce((sum, { squareSum }) => sum + squareSum, 0);
  const dof = fits.reduce((sum, fit) => sum + fit.dof, 0);
  const gaugeSd =
    Math.sqrt(all.reduce((sum, { sdMm }) => sum + sdMm * sdMm, 0) / all.length) / Math.SQRT2;
  const one = readingSd(dof === 0 ? 0 : Math.sqrt(squares / dof), dof, gaugeSd);
  const scale = (one.sd / fits.length) ** 2;
  const read = INDEX.map(
    (i) =>
      INDEX.map(
        (j) => scale * fits.reduce((sum, fit) => sum + fit.unscaled[i]![j]!, 0),
      ) as unknown as Three,
  );
  const found = { turns: fits.flatMap(({ coefficients }) => coefficients), read, readDof: one.dof };
  return {
    axis,
    middle,
    shift: along(found, [1, 0, 0]),
    perX: columns.includes('perX') ? along(found, [0, 1, 0]) : null,
    perY: columns.includes('perY') ? along(found, [0, 0, 1]) : null,
    ...found,
    combCount: all.length,
  };
}

const INDEX = [0, 1, 2] as const;

/** How far the back lies off the front at a place, mm. */
export const fieldAt = (field: AxisField, at: Point<'blank'>): Estimate =>
  along(field, [1, at.x - field.middle.x, at.y - field.middle.y]);

/** The sd of the same by the readings alone, mm. */
export function readSdAt({ read, middle }: AxisField, at: Point<'blank'>): number {
  const v: Three = [1, at.x - middle.x, at.y - middle.y];
  const variance = v.reduce((sum: number, share, i) => sum + share * dot(read[i]!, v), 0);
  return Math.sqrt(Math.max(0, variance));
}

/** How one turn over differs from the next at a place, mm; null after a single one. */
export function placingAt(field: AxisField, at: Point<'blank'>): Estimate | null {
  const n = field.turns.length;
  if (n < 2) return null;
  const v: Three = [1, at.x - field.middle.x, at.y - field.middle.y];
  return { value: 0, sd: scatterOf(field.turns.map((turn) => dot(turn, v))), dof: n - 1 };
}

type Found = Pick<AxisField, 'turns' | 'read' | 'readDof'>;

/**
 * One combination of shift and slopes, mean of all turns. The scatter from turn to turn holds the
 * readings' own error too, so the larger of the two counts.
 */
function along({ turns, read, readDof }: Found, v: Three): Estimate {
  const values = turns.map((turn) => dot(turn, v));
  const n = values.length;
  const value = values.reduce((sum, one) => sum + one, 0) / n;
  const variance = v.reduce((sum: number, share, i) => sum + share * dot(read[i]!, v), 0);
  const readSd = Math.sqrt(Math.max(0, variance));
  const ofTurns = n < 2 ? 0 : scatterOf(values) / Math.sqrt(n);
  return ofTurns > readSd
    ? { value, sd: ofTurns, dof: n - 1 }
    : { value, sd: readSd, dof: readDof };
}

const dot = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function scatterOf(values: readonly number[]): number {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
}

type Slope = 'perX' | 'perY';

const columnAt = (slope: Slope, at: Point<'blank'>, middle: Point<'blank'>): number =>
  slope === 'perX' ? at.x - middle.x : at.y - middle.y;

const tells = (combs: readonly Comb[], middle: Point<'blank'>, slopes: readonly Slope[]): boolean =>
  nullSpace(combs.map(({ at }) => [1, ...slopes.map((slope) => columnAt(slope, at, middle))]))
    .length === 0;

/** Which slopes the places of the combs can tell: both, the one across, the one along, or none. */
function columnsFor(
  all: readonly Comb[],
  middle: Point<'blank'>,
  axis: 'x' | 'y',
): readonly Slope[] {
  const [across, own]: readonly [Slope, Slope] = axis === 'x' ? ['perY', 'perX'] : ['perX', 'perY'];
  const choices: readonly (readonly Slope[])[] = [['perX', 'perY'], [across], [own]];
  return choices.find((slopes) => tells(all, middle, slopes)) ?? [];
}

/** Turns fitted together: each its own shift, the slopes common to them. */
function fitOf(
  sets: readonly (readonly Comb[])[],
  middle: Point<'blank'>,
  columns: readonly Slope[],
) {
  const n = sets.length;
  const fit = leastSquares(
    sets.flatMap((combs, turn) =>
      combs.map(({ at }) => [
        ...sets.map((_, k) => (k === turn ? 1 : 0)),
        ...columns.map((column) => columnAt(column, at, middle)),
      ]),
    ),
    sets.flat().map(({ t1Mm, t2Mm }) => (t1Mm - t2Mm) / 2),
  );
  invariant(fit !== null, 'columns that the places tell apart could not be fitted');
  const slopeAt = (name: Slope): number => columns.indexOf(name);
  const slope = (name: Slope): number =>
    slopeAt(name) < 0 ? 0 : fit.coefficients[n + slopeAt(name)]!;
  // The mean of the shifts, perX and perY as sums of the fitted columns.
  const rows = [
    fit.coefficients.map((_, k) => (k < n ? 1 / n : 0)),
    ...(['perX', 'perY'] as const).map((name) =>
      fit.coefficients.map((_, k) => (slopeAt(name) >= 0 && k === n + slopeAt(name) ? 1 : 0)),
    ),
  ];
  return {
    coefficients: sets.map((_, k): Three => [fit.coefficients[k]!, slope('perX'), slope('perY')]),
    unscaled: rows.map((u) =>
      rows.map((v) =>
        u.reduce(
          (sum, a, i) => sum + a * v.reduce((s, b, j) => s + b * fit.unscaled[i]![j]!, 0),
          0,
        ),
      ),
    ),
    squareSum: fit.residuals.reduce((sum, residual) => sum + residual * residual, 0),
    dof: fit.dof,
  };
}

import { linearSolve } from './linear-solve.ts';

/** A reading of a surface: its value at a place. */
export interface Sounding {
  readonly x: number;
  readonly y: number;
  readonly value: number;
}

/** How a surface is taken to differ from a plane, and how well it was read. */
export interface SurfaceLaw {
  /** The sd of one reading by its gauge. */
  readonly gaugeSd: number;
  /** By how much the surface itself stands off its plane, as an sd, and over what distance it changes. */
  readonly unevenSd: number;
  readonly reach: number;
}

/** The surface through some readings. */
export interface Surface {
  /** The most likely value at a place: near readings count most, far from all it is their plane. */
  readonly at: (x: number, y: number) => number;
  /** The same less the plane through it, which is `perX x + perY y + level`. */
  readonly plane: { readonly level: number; readonly perX: number; readonly perY: number };
  /** How well the value at a place is known, as an sd. */
  readonly sdAt: (x: number, y: number) => number;
}

/**
 * The surface through readings by universal kriging: a plane, and about it a deviation whose
 * likeness falls with distance as exp(-d / reach). The gauge's own error is not followed. Null when
 * the places fix no plane.
 * Source: N. A. C. Cressie, Statistics for Spatial Data (1993), section 3.4.
 */
export function surfaceThrough(readings: readonly Sounding[], law: SurfaceLaw): Surface | null {
  const n = readings.length;
  if (n < 3) return null;
  const [x0, y0] = [mean(readings.map(({ x }) => x)), mean(readings.map(({ y }) => y))];
  const span = Math.max(...readings.map(({ x, y }) => Math.hypot(x - x0, y - y0))) || 1;
  const trend = (x: number, y: number): readonly number[] => [1, (x - x0) / span, (y - y0) / span];
  const { gaugeSd, unevenSd, reach } = law;
  const square = unevenSd * unevenSd;
  const like = (far: number): number => square * Math.exp(-far / reach);
  // A scale keeps the two parts of the matrix alike in size.
  const unit = square + gaugeSd * gaugeSd || 1;
  const matrix = [
    ...readings.map((a, i) => [
      ...readings.map(
        (b, j) =>
          (like(Math.hypot(a.x - b.x, a.y - b.y)) + (i === j ? gaugeSd * gaugeSd : 0)) / unit +
          // What two readings at one place must differ by, so that the matrix can be solved.
          (i === j ? 1e-9 : 0),
      ),
      ...trend(a.x, a.y),
    ]),
    ...[0, 1, 2].map((k) => [...readings.map(({ x, y }) => trend(x, y)[k]!), 0, 0, 0]),
  ];
  const solved = linearSolve(matrix, [...readings.map(({ value }) => value), 0, 0, 0]);
  if (solved === null) return null;
  const [level, right, away] = solved.slice(n) as [number, number, number];
  const rowAt = (x: number, y: number): readonly number[] => [
    ...readings.map((one) => like(Math.hypot(one.x - x, one.y - y)) / unit),
    ...trend(x, y),
  ];
  return {
    at: (x, y) => dot(rowAt(x, y), solved),
    plane: {
      level: level - (right * x0 + away * y0) / span,
      perX: right / span,
      perY: away / span,
    },
    sdAt: (x, y) => {
      const row = rowAt(x, y);
      const weights = linearSolve(matrix, row);
      return weights === null
        ? Infinity
        : Math.sqrt(Math.max(0, square - unit * dot(weights, row)));
    },
  };
}

/**
 * How likely readings are by a law, as a logarithm: with the plane taken out, so that it costs no
 * readings (restricted likelihood). Source: H. D. Patterson and R. Thompson, Biometrika 58 (1971) 545-554.
 */
export function logLikelihood(readings: readonly Sounding[], law: SurfaceLaw): number {
  const { gaugeSd, unevenSd, reach } = law;
  const trend = ({ x, y }: Sounding): readonly number[] => [1, x / 1000, y / 1000];
  const lower = cholesky(
    readings.map((a, i) =>
      readings.map(
        (b, j) =>
          unevenSd * unevenSd * Math.exp(-Math.hypot(a.x - b.x, a.y - b.y) / reach) +
          (i === j ? gaugeSd * gaugeSd : 0),
      ),
    ),
  );
  if (lower === null) return -Infinity;
  const values = forward(
    lower,
    readings.map(({ value }) => value),
  );
  const columns = [0, 1, 2].map((k) =>
    forward(
      lower,
      readings.map((one) => trend(one)[k]!),
    ),
  );
  const normal = columns.map((a) => columns.map((b) => dot(a, b)));
  const inner = cholesky(normal);
  if (inner === null) return -Infinity;
  const projected = forward(
    inner,
    columns.map((column) => dot(column, values)),
  );
  const left = dot(values, values) - dot(projected, projected);
  return -logOfDiagonal(lower) - logOfDiagonal(inner) - left / 2;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, one) => sum + one, 0) / values.length;

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, k) => sum + value * b[k]!, 0);

const logOfDiagonal = (lower: readonly (readonly number[])[]): number =>
  lower.reduce((sum, row, k) => sum + Math.log(row[k]!), 0);

/** The lower triangle whose square is a matrix; null when that is not positive. */
function cholesky(a: readonly (readonly number[])[]): readonly (readonly number[])[] | null {
  const lower: number[][] = [];
  for (let i = 0; i < a.length; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      let sum = a[i]![j]!;
      const other = j === i ? row : lower[j]!;
      for (let k = 0; k < j; k++) sum -= row[k]! * other[k]!;
      if (j < i) row.push(sum / other[j]!);
      else if (sum > 0) row.push(Math.sqrt(sum));
      else return null;
    }
    lower.push(row);
  }
  return lower;
}

function forward(
  lower: readonly (readonly number[])[],
  values: readonly number[],
): readonly number[] {
  const out: number[] = [];
  for (let i = 0; i < values.length; i++) {
    let sum = values[i]!;
    for (let k = 0; k < i; k++) sum -= lower[i]![k]! * out[k]!;
    out.push(sum / lower[i]![i]!);
  }
  return out;
}

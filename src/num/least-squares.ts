import { invariant } from './invariant.ts';

/** A straight model fitted to readings: `reading = sum of coefficient x column + residual`. */
export interface Fit {
  readonly coefficients: readonly number[];
  /** Inverse of the normal matrix: times the variance of one reading it is the covariance of the coefficients. */
  readonly unscaled: readonly (readonly number[])[];
  readonly residuals: readonly number[];
  /** How much of each reading the fit takes from that reading itself, 0..1. */
  readonly leverages: readonly number[];
  readonly dof: number;
  /** NaN when no reading is to spare. */
  readonly residualSd: number;
}

/**
 * Least squares by Householder reflections on columns scaled to length 1; null when the columns are
 * not independent to 1e-13, so that the readings cannot tell the coefficients apart.
 * Source: G. H. Golub, Numerische Mathematik 7 (1965) 206-216.
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  readings: readonly number[],
): Fit | null {
  const n = rows.length;
  const p = rows[0]?.length ?? 0;
  invariant(p > 0 && readings.length === n, 'a fit needs columns, and a reading for each row');
  if (n < p) return null;
  const scales = Array.from({ length: p }, (_, j) => Math.hypot(...rows.map((row) => row[j]!)));
  if (scales.some((scale) => !(scale > 0))) return null;
  const a = rows.map((row) => row.map((value, j) => value / scales[j]!));
  const y = [...readings];
  const reflections: number[][] = [];
  for (let k = 0; k < p; k++) {
    const norm = Math.hypot(...a.slice(k).map((row) => row[k]!));
    if (!(norm > 1e-13)) return null;
    const head = a[k]![k]!;
    const v = a.map((row, i) => (i < k ? 0 : row[k]!));
    v[k] = head + (head < 0 ? -norm : norm);
    reflect(v, k, y);
    for (let j = k; j < p; j++) {
      const column = a.map((row) => row[j]!);
      reflect(v, k, column);
      column.forEach((value, i) => {
        a[i]![j] = value;
      });
    }
    reflections.push(v);
  }
  const triangle = a.slice(0, p);
  const scaled = backSolve(triangle, y);
  const inverse = inverseOf(triangle);
  // The residuals are the rest of the turned readings, turned back.
  const residuals = y.map((value, i) => (i < p ? 0 : value));
  for (let k = p - 1; k >= 0; k--) reflect(reflections[k]!, k, residuals);
  const dof = n - p;
  return {
    coefficients: scaled.map((value, j) => value / scales[j]!),
    unscaled: inverse.map((row, i) =>
      inverse.map((other, j) => dot(row, other) / (scales[i]! * scales[j]!)),
    ),
    residuals,
    leverages: leveragesOf(reflections, n, p),
    dof,
    residualSd: dof === 0 ? NaN : Math.hypot(...residuals) / Math.sqrt(dof),
  };
}

/** Mirrors `column` in the plane whose normal is `v`, which is nil above `from`. */
function reflect(v: readonly number[], from: number, column: number[]): void {
  let [along, square] = [0, 0];
  for (let i = from; i < v.length; i++) {
    along += v[i]! * column[i]!;
    square += v[i]! * v[i]!;
  }
  const by = (2 * along) / square;
  for (let i = from; i < v.length; i++) column[i]! -= by * v[i]!;
}

function backSolve(
  triangle: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] {
  const p = triangle.length;
  const x = new Array<number>(p).fill(0);
  for (let i = p - 1; i >= 0; i--) {
    let rest = right[i]!;
    for (let j = i + 1; j < p; j++) rest -= triangle[i]![j]! * x[j]!;
    x[i] = rest / triangle[i]![i]!;
  }
  return x;
}

/** Rows of the inverse of an upper triangle. */
function inverseOf(triangle: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const p = triangle.length;
  const columns = Array.from({ length: p }, (_, k) =>
    backSolve(
      triangle,
      Array.from({ length: p }, (__, i) => (i === k ? 1 : 0)),
    ),
  );
  return Array.from({ length: p }, (_, i) => columns.map((column) => column[i]!));
}

/** Squares of the first `p` columns of the turning, row by row. */
function leveragesOf(
  reflections: readonly (readonly number[])[],
  n: number,
  p: number,
): readonly number[] {
  const sums = new Array<number>(n).fill(0);
  for (let k = 0; k < p; k++) {
    const column = Array.from({ length: n }, (_, i) => (i === k ? 1 : 0));
    for (let r = p - 1; r >= 0; r--) reflect(reflections[r]!, r, column);
    column.forEach((value, i) => {
      sums[i]! += value * value;
    });
  }
  return sums;
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, k) => sum + value * b[k]!, 0);

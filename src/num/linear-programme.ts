import { invariant } from './invariant.ts';

/** Most of `gain · x` over x >= 0 with every row kept. */
export interface LinearProgramme {
  readonly gain: readonly number[];
  readonly rows: readonly LinearRow[];
}

export interface LinearRow {
  readonly of: readonly number[];
  readonly is: 'at-most' | 'exactly';
  readonly value: number;
}

export type LinearAnswer =
  | { readonly kind: 'best'; readonly value: number; readonly x: readonly number[] }
  | { readonly kind: 'impossible' }
  | { readonly kind: 'without-end' };

/**
 * The answer of a small dense linear programme by the two-phase simplex method on a tableau. Rows are
 * scaled to their largest figure; figures below 1e-9 of that count as 0. For some hundreds of unknowns
 * and a few dozen rows; not for large or badly scaled ones.
 *
 * Source: G. B. Dantzig, Linear Programming and Extensions (1963), chapters 5 and 6; the rule against
 * going in circles is R. G. Bland, Mathematics of Operations Research 2 (1977) 103-107.
 */
export function solved({ gain, rows }: LinearProgramme): LinearAnswer {
  const count = gain.length;
  const slackCount = rows.filter((row) => row.is === 'at-most').length;
  const free = count + slackCount;
  // A row that 0 keeps starts with its own slack; only the others need an artificial unknown.
  const startsKept = (row: LinearRow): boolean => row.is === 'at-most' && row.value >= 0;
  const width = free + rows.filter((row) => !startsKept(row)).length + 1;
  const table = new Float64Array((rows.length + 1) * width);
  const basis = new Int32Array(rows.length);
  let [slack, artificial] = [count, free];
  rows.forEach((row, r) => {
    invariant(row.of.length === count, 'a row has as many figures as there are unknowns');
    let largest = 0;
    for (const value of row.of) largest = Math.max(largest, Math.abs(value));
    const scale = (row.value < 0 ? -1 : 1) / (largest === 0 ? 1 : largest);
    for (let c = 0; c < count; c++) table[r * width + c] = row.of[c]! * scale;
    table[r * width + width - 1] = row.value * scale;
    if (row.is === 'at-most') table[r * width + slack] = Math.sign(scale);
    basis[r] = startsKept(row) ? slack : artificial;
    if (!startsKept(row)) table[r * width + artificial++] = 1;
    if (row.is === 'at-most') slack += 1;
  });
  const tableau: Tableau = { table, basis, width, rowCount: rows.length };
  if (!madePossible(tableau, free)) return { kind: 'impossible' };
  const last = rows.length * width;
  table.fill(0, last, last + width);
  gain.forEach((value, c) => (table[last + c] = -value));
  basis.forEach((column, r) => {
    const factor = table[last + column]!;
    if (factor !== 0) addRow(tableau, rows.length, r, -factor);
  });
  if (!climbed(tableau, free)) return { kind: 'without-end' };
  const x = new Array<number>(count).fill(0);
  basis.forEach((column, r) => {
    if (column < count) x[column] = table[r * width + width - 1]!;
  });
  return { kind: 'best', value: gain.reduce((sum, value, c) => sum + value * x[c]!, 0), x };
}

interface Tableau {
  /** Rows of the programme, then the row of what is still to be gained. */
  readonly table: Float64Array;
  /** Which unknown each row stands for. */
  readonly basis: Int32Array;
  readonly width: number;
  readonly rowCount: number;
}

const TINY = 1e-9;

/** First phase: drives the artificial unknowns (columns from `free`) out; false when they cannot all be 0. */
function madePossible(tableau: Tableau, free: number): boolean {
  const { table, basis, width, rowCount } = tableau;
  const last = rowCount * width;
  for (let c = free; c < width - 1; c++) table[last + c] = 1;
  for (let r = 0; r < rowCount; r++) if (basis[r]! >= free) addRow(tableau, rowCount, r, -1);
  climbed(tableau, free);
  const largest = basis.reduce(
    (most, _, r) => Math.max(most, Math.abs(table[r * width + width - 1]!)),
    1,
  );
  if (Math.abs(table[last + width - 1]!) > TINY * 100 * largest) return false;
  for (let r = 0; r < rowCount; r++) {
    if (basis[r]! < free) continue;
    // An artificial unknown that stayed at 0 gives its row to any other that can have it.
    for (let c = 0; c < free; c++)
      if (Math.abs(table[r * width + c]!) > TINY) {
        pivot(tableau, r, c);
        break;
      }
  }
  return true;
}

/** Second phase: true at the top, false when there is none. */
function climbed(tableau: Tableau, free: number): boolean {
  const { rowCount } = tableau;
  // Long before this many steps the plain rule is done, unless it goes in circles.
  const patience = 20 * (rowCount + 5);
  for (let step = 0; step < 200 * (rowCount + 50); step++) {
    const column = entering(tableau, free, step > patience);
    if (column < 0) return true;
    const row = leaving(tableau, column);
    if (row < 0) return false;
    pivot(tableau, row, column);
  }
  throw new Error('a linear programme did not come to an end');
}

function entering({ table, width, rowCount }: Tableau, free: number, isFirst: boolean): number {
  const last = rowCount * width;
  let [best, least] = [-1, -TINY];
  for (let c = 0; c < free; c++) {
    const value = table[last + c]!;
    if (value < least) {
      if (isFirst) return c;
      [best, least] = [c, value];
    }
  }
  return best;
}

function leaving({ table, basis, width, rowCount }: Tableau, column: number): number {
  let [best, least] = [-1, Infinity];
  for (let r = 0; r < rowCount; r++) {
    const value = table[r * width + column]!;
    if (value <= TINY) continue;
    const ratio = Math.max(0, table[r * width + width - 1]!) / value;
    if (ratio < least - TINY || (ratio < least + TINY && basis[r]! < basis[best]!))
      [best, least] = [r, Math.min(least, ratio)];
  }
  return best;
}

function pivot(tableau: Tableau, row: number, column: number): void {
  const { table, basis, width, rowCount } = tableau;
  const factor = 1 / table[row * width + column]!;
  for (let c = 0; c < width; c++) table[row * width + c]! *= factor;
  for (let r = 0; r <= rowCount; r++) {
    const by = table[r * width + column]!;
    if (r !== row && by !== 0) addRow(tableau, r, row, -by);
  }
  basis[row] = column;
}

/** Adds `by` times a row to another. */
function addRow({ table, width }: Tableau, to: number, from: number, by: number): void {
  for (let c = 0; c < width; c++) table[to * width + c]! += by * table[from * width + c]!;
}

/** One row of a small linear programme: `slope` . x must be at least `least`. */
export interface Row {
  readonly slope: readonly number[];
  readonly least: number;
}

/** Rows are met to within this share of the largest number in them: elimination leaves some hundreds of roundings. */
const MET_SHARE = 1e-11;

/**
 * The x that meets every row and makes `cost` . x least, by trying every corner that as many rows make as x
 * has coordinates; slow, and with nothing to go wrong in. Null when no corner meets all rows.
 */
export function leastCost(rows: readonly Row[], cost: readonly number[]): readonly number[] | null {
  let best: readonly number[] | null = null;
  let bestCost = Infinity;
  for (const chosen of choices(rows.length, cost.length)) {
    const corner = solved(chosen.map((index) => rows[index]!));
    if (corner === null || !rows.every((row) => isMet(row, corner))) continue;
    const paid = dotOf(cost, corner);
    if (paid >= bestCost) continue;
    best = corner;
    bestCost = paid;
  }
  return best;
}

function isMet({ slope, least }: Row, x: readonly number[]): boolean {
  const parts = slope.map((one, k) => Math.abs(one * x[k]!));
  const size = Math.max(1, Math.abs(least), ...parts);
  return dotOf(slope, x) - least >= -MET_SHARE * size;
}

const dotOf = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, one, k) => sum + one * b[k]!, 0);

function* choices(count: number, size: number, from = 0): Generator<readonly number[]> {
  if (size === 0) yield [];
  else
    for (let first = from; first <= count - size; first++)
      for (const rest of choices(count, size - 1, first + 1)) yield [first, ...rest];
}

/** Below this share of its row's largest number a pivot is rounding: the rows do not make a corner. */
const PIVOT_SHARE = 1e-11;

/** Where these rows are all met exactly, by elimination with the largest pivot; null when they are not independent. */
function solved(rows: readonly Row[]): readonly number[] | null {
  const table = rows.map(({ slope, least }) => {
    const size = Math.max(...slope.map(Math.abs));
    return [...slope.map((one) => one / size), least / size];
  });
  const n = rows.length;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++)
      if (Math.abs(table[row]![column]!) > Math.abs(table[pivot]![column]!)) pivot = row;
    [table[column], table[pivot]] = [table[pivot]!, table[column]!];
    const line = table[column]!;
    if (!(Math.abs(line[column]!) > PIVOT_SHARE)) return null;
    for (let row = 0; row < n; row++) {
      if (row === column) continue;
      const times = table[row]![column]! / line[column]!;
      table[row] = table[row]!.map((one, k) => one - times * line[k]!);
    }
  }
  return table.map((line, row) => line[n]! / line[row]!);
}

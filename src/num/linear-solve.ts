/**
 * Solves `a x = b` for a square matrix by elimination with the largest pivot of each column; null
 * when a pivot is below 1e-12 of the largest entry, so that nothing can be told.
 */
export function linearSolve(
  a: readonly (readonly number[])[],
  b: readonly number[],
): readonly number[] | null {
  const n = b.length;
  const rows = a.map((row, i) => [...row, b[i]!]);
  const largest = Math.max(...a.flat().map(Math.abs));
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++)
      if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    const pivot = rows[best]!;
    if (!(Math.abs(pivot[k]!) > 1e-12 * largest)) return null;
    rows[best] = rows[k]!;
    rows[k] = pivot;
    for (let i = k + 1; i < n; i++) {
      const row = rows[i]!;
      const by = row[k]! / pivot[k]!;
      for (let j = k; j <= n; j++) row[j]! -= by * pivot[j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let rest = rows[i]![n]!;
    for (let j = i + 1; j < n; j++) rest -= rows[i]![j]! * x[j]!;
    x[i] = rest / rows[i]![i]!;
  }
  return x;
}

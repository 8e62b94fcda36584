/**
 * Ways to change the coefficients of a straight model that no row notices: a basis of the vectors
 * that every row takes to 0. Empty when the rows tell all coefficients apart. Entries below 1e-9 of
 * the largest of their column count as 0.
 */
export function nullSpace(rows: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const p = rows[0]?.length ?? 0;
  const scales = Array.from(
    { length: p },
    (_, j) => Math.max(...rows.map((row) => Math.abs(row[j]!))) || 1,
  );
  const a = rows.map((row) => row.map((value, j) => value / scales[j]!));
  const pivots: number[] = [];
  for (let j = 0; j < p && pivots.length < a.length; j++) {
    const top = pivots.length;
    let best = top;
    for (let i = top; i < a.length; i++) if (Math.abs(a[i]![j]!) > Math.abs(a[best]![j]!)) best = i;
    if (Math.abs(a[best]![j]!) < 1e-9) continue;
    const row = a[best]!.map((value) => value / a[best]![j]!);
    a[best] = a[top]!;
    a[top] = row;
    for (let i = 0; i < a.length; i++) {
      if (i === top) continue;
      const by = a[i]![j]!;
      for (let k = 0; k < p; k++) a[i]![k]! -= by * row[k]!;
    }
    pivots.push(j);
  }
  const free = Array.from({ length: p }, (_, j) => j).filter((j) => !pivots.includes(j));
  return free.map((f) =>
    Array.from({ length: p }, (_, j) => {
      const at = pivots.indexOf(j);
      const value = j === f ? 1 : at < 0 ? 0 : -a[at]![f]!;
      return Math.abs(value) < 1e-9 ? 0 : value / scales[j]!;
    }),
  );
}

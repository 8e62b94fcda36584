/** A smooth rising function from values and slopes at equal steps; 0 before the first and 1 after the last. */
export interface HermiteTable {
  readonly from: number;
  readonly step: number;
  /** Value and slope times step, in turn. */
  readonly nodes: Float64Array;
}

/** Cubic between nodes: off by less than `step^4 / 384` times the fourth derivative. */
export function hermiteAt({ from, step, nodes }: HermiteTable, x: number): number {
  const place = (x - from) / step;
  const last = nodes.length / 2 - 1;
  if (place <= 0) return 0;
  if (place >= last) return 1;
  const k = place | 0;
  const u = place - k;
  const a = nodes[2 * k]!;
  const da = nodes[2 * k + 1]!;
  const db = nodes[2 * k + 3]!;
  const c = nodes[2 * k + 2]! - a;
  return a + u * (da + u * (3 * c - 2 * da - db + u * (da + db - 2 * c)));
}

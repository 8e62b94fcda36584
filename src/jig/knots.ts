/** A quantity that changes with height: straight between knots; two knots at one height are a jump. */
export type Knots = readonly Knot[];

export interface Knot {
  readonly zMm: number;
  readonly value: number;
}

/** The value just below or just above a height; constant beyond the ends. */
export function valueAt(knots: Knots, zMm: number, from: 'below' | 'above'): number {
  const before = knots.findLast((k) => (from === 'below' ? k.zMm < zMm : k.zMm <= zMm));
  const after = knots.find((k) => (from === 'below' ? k.zMm >= zMm : k.zMm > zMm));
  if (before === undefined) return after?.value ?? 0;
  if (after === undefined) return before.value;
  const share = (zMm - before.zMm) / (after.zMm - before.zMm);
  return before.value + share * (after.value - before.value);
}

/** All heights at which any of them has a knot, rising, each once. */
export function heightsOf(all: readonly Knots[]): readonly number[] {
  return [...new Set(all.flatMap((knots) => knots.map((k) => k.zMm)))].sort((a, b) => a - b);
}

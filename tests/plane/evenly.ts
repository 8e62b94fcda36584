import fc from 'fast-check';

/** Numbers spread evenly over a range; `fc.double` crowds round nought, where little happens. */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 1_000_000 }).map((i) => min + ((max - min) * i) / 1_000_000);
}

import { describe, expect, it } from 'vitest';
import { locatorsOf } from '../../src/hold/locators.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { onLine, roundBlank, roundPart } from '../sheet/bed-jobs.ts';

describe('what locates', () => {
  it('bears on dowels only once they stand, and on a nest on every side', () => {
    const { frontUp, backUp } = placingsOf(onLine);
    // Drilled with the blank: no dowel in the first placing.
    expect(locatorsOf(onLine, frontUp).dowels).toHaveLength(0);
    expect(locatorsOf(onLine, backUp).dowels).toHaveLength(2);
    // Ash bears 8 N/mm2: 8 x 6 x 1.2 x 6 = 345.6 N for each dowel of 6 mm (estimate).
    expect(locatorsOf(onLine, backUp).dowels[0]!.sidewaysN).toBeCloseTo(345.6, 6);
    const normals = locatorsOf(roundBlank, placingsOf(roundBlank).frontUp).stops.map(
      ({ normal: [x, y] }) => `${Math.round(x)} ${Math.round(y)}`,
    );
    for (const each of ['1 0', '-1 0', '0 1', '0 -1']) expect(normals).toContain(each);
    expect(locatorsOf(roundPart, placingsOf(roundPart).frontUp).stops).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { placeWell } from '../../src/advise/place/place.ts';
import { placesOf } from '../../src/advise/place/places.ts';
import { aBench, toTheEnd, variantsFromDisk, variantsOfTexts } from './a-bench.ts';
import { exactShop, smallJob } from './small-job.ts';

describe('placing the contacts', () => {
  it('leaves alone what is fine, and has nothing to say of a nest', () => {
    const fine = toTheEnd(
      placeWell(aBench(variantsOfTexts(smallJob({}), exactShop()), 1000), { searchTrials: 256 }),
    );
    expect(fine.advice).toEqual({ kind: 'leave it', found: null });
    expect(fine.looked).toBe(0);
    const nest = toTheEnd(
      placeWell(aBench(variantsFromDisk('jigs/compass-cover.yaml'), 100), { searchTrials: 256 }),
    );
    expect(nest.advice.kind).toBe('no places');
  });

  it('moves pairs of dowels as mirror images only', () => {
    const { job } = variantsFromDisk('jigs/chime-box.yaml').whole;
    const places = placesOf(job)!;
    expect(places.jobAt(places.dials.map(({ now }) => now))).toEqual(job);
    const moved = places.jobAt(places.dials.map(({ now }, k) => (k === 1 ? now - 4 : now)));
    if (moved?.locating !== 'dowels') throw new Error('no dowels');
    expect(moved.dowels.at).toContainEqual({ x: 19, y: 20 });
    expect(moved.dowels.at).toContainEqual({ x: 281, y: 20 });
  });
});

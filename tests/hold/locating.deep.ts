import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/job/job.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { holdPlan, type HoldPlan } from '../../src/hold/plan.ts';
import { intersectionOf, differenceOf } from '../../src/plane/clip.ts';
import { standingIn } from '../../src/sheet/locating/way-of.ts';
import { pieceOf } from '../../src/sweep/piece.ts';
import { atFence, offMiddle, onLine, roundBlank, roundPart } from '../sheet/bed-jobs.ts';
import { aHolding } from './a-holding.ts';

type Loose = Exclude<Job, { locating: 'stops' }>;

const insertsOf = (job: Loose): Loose => ({
  ...job,
  onBed: { ...job.onBed, value: { x: 140, y: 110 } },
  shop: {
    ...job.shop,
    bed: {
      ...job.shop.bed,
      inserts: {
        thread: 'M6',
        first: { x: 20, y: 20 },
        pitchMm: { x: 60, y: 60 },
        count: { x: 10, y: 6 },
      },
    },
    machine: { ...job.shop.machine, aboveTip: { ...job.shop.machine.aboveTip, dustShoe: null } },
  },
});

function planned(job: Loose): HoldPlan {
  const placings = placingsOf(job);
  const bodies = (face: 'front' | 'back') =>
    standingIn(job, placings)
      .filter((one) => one.placings.includes(face))
      .map(({ body }) => body);
  return holdPlan({
    job,
    holding: aHolding({ straps: [{ ...aHolding().straps[0]!, slotMm: [18, 80], lengthMm: 100 }] }),
    placings,
    standingOf: () => ({ frontUp: bodies('front'), backUp: bodies('back') }),
    programs: { frontUp: null, backUp: null },
  });
}

describe('a blank that is located otherwise than by stops', () => {
  it.each([
    ['dowels on its line', onLine],
    ['dowels off its middle', offMiddle],
    ['a nest', roundBlank],
    ['a nest round the part', roundPart],
    ['a fence and a dowel', atFence],
  ] as const)('by %s has straps on what lies there, and off what stands there', (_name, wish) => {
    const job = insertsOf(wish);
    const plan = planned(job);
    for (const one of [plan.frontUp, plan.backUp]) {
      const { outline } = pieceOf(job, one.placing);
      const straps = one.layout!.straps;
      expect(straps.length).toBeGreaterThan(1);
      for (const { pad, bodies } of straps) {
        expect(differenceOf([pad], [outline])).toEqual([]);
        for (const body of bodies)
          for (const other of one.standing)
            if (other.highMm > body.lowMm)
              expect(intersectionOf([body.outline], [other.outline])).toEqual([]);
      }
      expect(one.clashes).toEqual([]);
    }
  });

  it('lies elsewhere when its dowels are off the middle, and its straps go along', () => {
    const job = insertsOf(offMiddle);
    const { backUp, frontUp } = planned(job);
    // The dowels stand at 20 and 240 of 280: turned over, the blank lies 2 x 130 - 280 = -20 along X.
    expect(
      pieceOf(job, backUp.placing).box.lowX - pieceOf(job, frontUp.placing).box.lowX,
    ).toBeCloseTo(-20, 9);
  });
});

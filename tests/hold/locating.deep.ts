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

const insertsOf = (job: Loose, pitch = 60): Loose => ({
  ...job,
  onBed: { ...job.onBed, value: { x: 140, y: 110 } },
  shop: {
    ...job.shop,
    bed: {
      ...job.shop.bed,
      inserts: {
        thread: 'M6',
        first: { x: 20, y: 20 },
        pitchMm: { x: pitch, y: pitch },
        count: { x: Math.floor(600 / pitch), y: Math.floor(400 / pitch) },
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
    ['dowels on its line', onLine, [true, true]],
    ['dowels off its middle', offMiddle, [true, true]],
    // All three straps that can lie do so on its left: 1206 N at 6 mm from the edge about which it tips.
    ['a nest', roundBlank, [false, true]],
    ['a nest round the part', roundPart, [true, true]],
    ['a fence and a dowel', atFence, [true, true]],
  ] as const)('by %s has straps on what lies there, off what stands', (_name, wish, held) => {
    const job = insertsOf(wish);
    const plan = planned(job);
    expect([plan.frontUp, plan.backUp].map(({ verdict }) => verdict!.isHeld)).toEqual(held);
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

  it('does not hold a part with two straps 2 mm inside its far edge: it tips over that edge', () => {
    // By hand, in Nmm about the far edge at y = 155: two straps of 252 N at 153 bear 2 x 252 x 2 = 1008, and the walls pressed
    // back by friction under the part, 0.2 x 490 N on an arm of 6 mm, 588. The cutter at y = 64 lifts 15.6 N, 1420, and pulls 32.6 N
    // 12 mm above the walls, 391: 1596 / 1811 = 0.88.
    const { verdict, layout } = planned(insertsOf(roundPart, 80)).backUp;
    expect(layout!.straps.map(({ padAt }) => Math.round(padAt.y))).toEqual([153, 153]);
    expect(verdict!.isHeld).toBe(false);
    expect(verdict!.worst.gives).toBe('tips');
    expect(verdict!.factor).toBeGreaterThan(0.8);
    expect(verdict!.factor).toBeLessThan(0.95);
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

import { describe, expect, it } from 'vitest';
import { isGood } from '../../src/hold/placing-plan.ts';
import { aFeature, aJob } from '../jig/a-job.ts';
import { aHolding, strap } from './a-holding.ts';
import { expectBestOfAll, expectSoundPlans, inserts, planOf } from './plan-laws.ts';

const dish = aFeature({ name: 'dish', shape: { kind: 'circle', diameterMm: 60 } });
const job = aJob({ features: [dish], onBed: { x: 140, y: 100 }, inserts });
const window = aFeature({
  name: 'window',
  cut: 'profile-inside',
  shape: { kind: 'circle', diameterMm: 60 },
  depthMm: 24,
  through: true,
});
const screw = { name: 'spax', shankMm: 4, lengthMm: 38, headMm: 8, headHighMm: 3 };

describe('a plan', () => {
  it('has straps that sampling finds clear, over solid wood and within reach', () => {
    expect(expectSoundPlans(61, 4)).toBeGreaterThan(3);
  });

  it('has the best set of all, by trying them', () => {
    expect(expectBestOfAll(62, 8)).toBeGreaterThan(15);
  });

  it('uses a pinned bolt, and never a forbidden one', () => {
    const [chosen] = planOf(job).frontUp.layout!.straps;
    const forbid = [chosen!.bolt.onBed];
    const clamps = aHolding().clamps;
    const without = planOf(job, aHolding({ clamps: { ...clamps, frontUp: { pin: [], forbid } } }));
    const bolts = without.frontUp.layout!.straps.map(({ bolt }) => bolt.onBed);
    expect(bolts).not.toContainEqual(chosen!.bolt.onBed);
    const pin = [{ x: 325, y: 325 }];
    const pinned = planOf(job, aHolding({ clamps: { ...clamps, frontUp: { pin, forbid: [] } } }));
    expect(pinned.frontUp.layout!.straps.map(({ bolt }) => bolt.onBed)).toContainEqual(pin[0]);
    const nowhere = [{ x: 326.5, y: 325 }];
    const none = planOf(
      job,
      aHolding({ clamps: { ...clamps, frontUp: { pin: nowhere, forbid: [] } } }),
    );
    expect(none.frontUp.layout).toBeNull();
    expect(isGood(none.frontUp)).toBe(false);
  });

  it('says what is in the way when the shoe passes everywhere', () => {
    // The shoe hangs 12 above the tip: at 12 + 18 it is under a strap's 36 over all of a wide dish.
    const wide = aJob({
      features: [
        aFeature({ shape: { kind: 'rectangle', widthMm: 240, heightMm: 150, cornerRadiusMm: 4 } }),
      ],
      onBed: { x: 140, y: 100 },
      inserts,
    });
    const { frontUp } = planOf(wide);
    expect(frontUp.layout).toBeNull();
    expect(isGood(frontUp)).toBe(false);
    const kinds = frontUp.candidates.refused.map(({ because }) => because.kind);
    expect(new Set(kinds)).toEqual(new Set(['struck']));
    expect(frontUp.candidates.refused.length).toBeGreaterThan(3);
  });

  it('holds more with more torque, and less the more the cutter pulls', () => {
    const factor = (holding: ReturnType<typeof aHolding>): number =>
      planOf(job, holding).frontUp.verdict!.factor;
    const stated = { sidewaysN: 40, liftN: 20 };
    const plain = factor(aHolding({ force: stated }));
    expect(
      factor(aHolding({ force: stated, straps: [{ ...strap, torqueNm: 6 }] })),
    ).toBeGreaterThan(plain);
    expect(factor(aHolding({ force: { ...stated, sidewaysN: 80 } }))).toBeLessThan(plain);
    const smooth = factor(aHolding({ force: stated, friction: 0.1 }));
    expect(smooth).toBeLessThan(plain);
  });

  it('dents soft wood and says at which torque it would not', () => {
    const { crush } = planOf(job).frontUp;
    // 4 Nm on M6 at K 0.15 is 4444 N; ash bears 8 N/mm2.
    const one = crush[0]!;
    const share = one.strap.boltToHeelMm / (one.strap.boltToHeelMm + one.strap.boltToWorkMm);
    expect(one.pressure).toBeCloseTo((4444.4 * share) / 240, 1);
    const gentle = planOf(
      job,
      aHolding({ straps: [{ ...strap, torqueNm: one.gentleTorqueNm * 0.99 }] }),
    );
    expect(
      gentle.frontUp.crush.filter((other) => other.strap.boltToWorkMm === one.strap.boltToWorkMm),
    ).toEqual([]);
  });

  it('asks for a hold of a piece that comes free, and takes tabs or screws for one', () => {
    const loose = aJob({ features: [window], onBed: { x: 140, y: 100 }, inserts });
    const [rest, inside] = planOf(loose).frontUp.pieces;
    expect(rest!.isHeld).toBe(true);
    expect(inside).toMatchObject({ isHeld: false, by: [] });
    const tabs = new Map([['window', { count: 8, widthMm: 8, thickMm: 4 }]]);
    expect(planOf(loose, aHolding({ tabs })).frontUp.pieces[1]).toMatchObject({
      isHeld: true,
      by: ['8 tabs at window'],
    });
    const weak = new Map([['window', { count: 3, widthMm: 1, thickMm: 0.5 }]]);
    expect(planOf(loose, aHolding({ tabs: weak })).frontUp.pieces[1]!.isHeld).toBe(false);
    const screws = [
      { x: 130, y: 90 },
      { x: 150, y: 90 },
    ];
    const screwed = planOf(loose, aHolding({ screw, screws })).frontUp;
    expect(screwed.pieces[1]!.by).toEqual(['screw 1', 'screw 2']);
    expect(screwed.screws.flatMap(({ faults }) => faults)).toEqual([]);
  });

  it('looks at where screws stand', () => {
    const at = (places: { x: number; y: number }[], kind = screw) =>
      planOf(
        aJob({ features: [window], inserts: null }),
        aHolding({ screw: kind, screws: places }),
      ).frontUp.screws.flatMap(({ faults }) => faults);
    expect(at([{ x: 140, y: 60 }]).join()).toContain('from the cut of window');
    expect(at([{ x: 5, y: 60 }]).join()).toContain('from an edge');
    expect(
      at([
        { x: 40, y: 60 },
        { x: 45, y: 60 },
      ]).join(),
    ).toContain('stands 5.0 mm from screw 1');
    // Turned about Y, the hole of 40 lands at 240: 243 is 3 mm beside it, 240 is the very one.
    expect(
      at([
        { x: 40, y: 60 },
        { x: 243, y: 60 },
      ]).join(),
    ).toContain('3.0 mm beside the hole');
    expect(
      at([
        { x: 40, y: 60 },
        { x: 240, y: 60 },
      ]),
    ).toEqual([]);
    expect(at([{ x: 40, y: 60 }], { ...screw, lengthMm: 45 }).join()).toContain(
      'too low in a spoilboard',
    );
    expect(at([{ x: 40, y: 60 }], { ...screw, lengthMm: 28 }).join()).toContain(
      'too little to hold',
    );
  });

  it('is not good where the machine cannot go', () => {
    const far = aJob({ features: [{ ...dish, at: { x: 200, y: 90 } }], onBed: { x: 400, y: 100 } });
    const { travel } = planOf(far).frontUp;
    // The bed is 600 wide and so is the travel: 400 + 200 + 27 is beyond.
    expect(travel).toEqual([
      {
        axis: 'X',
        fromMm: expect.closeTo(573, 1) as number,
        toMm: expect.closeTo(627, 1) as number,
        travelMm: 600,
        kind: 'place',
      },
    ]);
  });
});

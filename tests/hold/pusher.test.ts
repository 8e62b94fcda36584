import { describe, expect, it } from 'vitest';
import { holdPlan } from '../../src/hold/plan.ts';
import { isBlankGood, isGood } from '../../src/hold/placing-plan.ts';
import { verdictOf, type Held } from '../../src/hold/verdict.ts';
import { lockingSlopeRad, wedgeForceN } from '../../src/hold/wedge.ts';
import type { Holding } from '../../src/job/holding.ts';
import type { StopsJob } from '../../src/job/job.ts';
import { intersectionOf } from '../../src/plane/clip.ts';
import { holdHeadline, holdLines } from '../../src/sheet/hold-words.ts';
import { aFeature, aJob } from '../jig/a-job.ts';
import { aHolding } from './a-holding.ts';
import { inserts, planOf } from './plan-laws.ts';
import { inputOf } from './remedies-laws.ts';

const dish = aFeature({ name: 'dish', shape: { kind: 'circle', diameterMm: 60 } });
const job = aJob({ features: [dish], onBed: { x: 140, y: 100 }, inserts });
const pushed: StopsJob = { ...job, hold: { ...job.hold, pusher: 'towards-stops' } };

describe('a wedge', () => {
  it('presses and stays as the inclined plane says', () => {
    // Statics, computed independently: 7 degrees, friction 0.15 on both faces: W / Q 2.337, slides back above 17.06 degrees.
    expect(wedgeForceN(1, (7 * Math.PI) / 180, 0.15, 0.15)).toBeCloseTo(2.337, 3);
    expect((lockingSlopeRad(0.15, 0.15) * 180) / Math.PI).toBeCloseTo(17.06, 2);
  });
});

describe('pushers', () => {
  it('stand opposite the stops, clear of straps, and are drawn and told when the job has them', () => {
    const { frontUp } = planOf(pushed);
    const { placed, noRoomAt } = frontUp.pushers;
    expect(placed.map(({ side }) => side)).toEqual(['far', 'right']);
    expect(noRoomAt).toEqual([]);
    expect(placed[0]!.at.y).toBe(180);
    expect(placed[0]!.normal).toEqual([0, -1]);
    expect(placed[1]!.at.x).toBe(280);
    for (const { body } of placed)
      for (const strap of frontUp.layout!.straps)
        for (const other of strap.bodies)
          if (other.lowMm < body.highMm)
            expect(intersectionOf([body.outline], [other.outline])).toEqual([]);
    const told = holdLines(pushed, frontUp)
      .map(({ text }) => text)
      .join('\n');
    expect(told).toContain('pushed against its stops: pusher at the far side');
    expect(told).toContain('holds nothing down');
    expect(told).toContain('what those bear is not counted');
    expect(planOf(job).frontUp.pushers.placed).toEqual([]);
  });

  it('hold the blank on its stops as hard as they push, and never less than without', () => {
    // 27 N towards the stop at the left, nothing else: it takes 27 N away from the stop, and any push towards it.
    const held: Held = {
      presses: [],
      ties: [],
      stops: [
        { at: [0, 30, 9], normal: [1, 0, 0] },
        { at: [0, 60, 9], normal: [1, 0, 0] },
      ],
      support: [],
      friction: 0.2,
      pushes: [{ at: [100, 45, 9], force: [-27, 0, 0] }],
    };
    const tied = {
      ...held,
      ties: [{ at: [50, 45, 0] as const, sidewaysN: 1000, downN: 1e6 }],
    };
    const pull = {
      sidewaysN: 30,
      liftN: 0,
      box: { lowX: 50, highX: 50, lowY: 45, highY: 45 },
      topMm: 0,
    };
    const without = verdictOf({ ...tied, pushes: [] }, pull, 2);
    expect(verdictOf(tied, pull, 2).factor).toBeGreaterThanOrEqual(without.factor - 1e-9);
    expect(verdictOf(held, pull, 2).factor).toBe(0);
    const before = planOf(job).frontUp.verdict!.factor;
    expect(planOf(pushed).frontUp.verdict!.factor).toBeGreaterThanOrEqual(before - 1e-9);
  });

  it('are left out, and that is said, where there is no room', () => {
    // The spoilboard ends at the blank's far edge.
    const { shop } = pushed;
    const spoilboard = { ...shop.bed.spoilboard, yMm: 100 + 180 };
    const short = { ...pushed, shop: { ...shop, bed: { ...shop.bed, spoilboard } } };
    const { frontUp } = planOf(short);
    expect(frontUp.pushers.noRoomAt).toEqual(['far']);
    expect(
      holdLines(short, frontUp)
        .map(({ text }) => text)
        .join('\n'),
    ).toContain('no pusher can stand at the far side');
  });
});

it('a pull between the directions that are tried is covered', () => {
  // Four presses of 100 N about the middle, friction 0.2: 80 N in all; 80 / 40 = 2, times cos 15 degrees at most.
  const held: Held = {
    presses: [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ].map(([x, y]) => ({ at: [x!, y!, 0], newtons: 100 })),
    ties: [],
    stops: [],
    support: [
      [0, 0, 0],
      [100, 0, 0],
      [100, 100, 0],
      [0, 100, 0],
    ],
    friction: 0.2,
  };
  const box = { lowX: 50, highX: 50, lowY: 50, highY: 50 };
  const { factor } = verdictOf(held, { sidewaysN: 40, liftN: 0, box, topMm: 0 }, 2);
  expect(factor).toBeLessThanOrEqual(2 * Math.cos(Math.PI / 12) + 1e-9);
  expect(factor).toBeGreaterThan(2 * Math.cos(Math.PI / 12) * Math.cos(Math.PI / 16) - 1e-9);
});

it('is never ready to cut when its stops cannot be made', () => {
  const plan = holdPlan({ ...inputOf(job, aHolding()), standingOf: () => null });
  expect(isBlankGood(plan.frontUp)).toBe(true);
  expect(isGood(plan.frontUp)).toBe(false);
  expect(holdHeadline(plan.frontUp)).toContain('NOT READY TO CUT');
  expect(
    holdLines(job, plan.frontUp).filter(
      ({ kind, text }) => kind === 'bad' && text.includes('cannot be made'),
    ),
  ).toHaveLength(1);
});

describe('T-tracks', () => {
  const bare = aJob({ features: [dish], onBed: { x: 140, y: 100 }, inserts: null });
  const along = (tracks: Holding['tracks']) => planOf(bare, aHolding({ tracks })).frontUp;

  it('take bolts along them, in steps, from end to end, and the search is told as near the best', () => {
    const { layout, verdict } = along([
      { along: 'x', atMm: 80, fromMm: 160, toMm: 220 },
      { along: 'x', atMm: 300, fromMm: 340, toMm: 400 },
    ]);
    expect(layout!.search).toBe('near');
    expect(verdict!.isHeld).toBe(true);
    for (const { bolt } of layout!.straps) {
      expect([80, 300]).toContain(bolt.onBed.y);
      expect(bolt.onBed.x % 10).toBe(0);
      expect(bolt.onBed.x).toBeGreaterThanOrEqual(160);
      expect(bolt.onBed.x).toBeLessThanOrEqual(400);
    }
  });

  it('out of reach, or too short, give no strap', () => {
    expect(along([{ along: 'y', atMm: 10, fromMm: 20, toMm: 380 }]).layout).toBeNull();
    expect(along([{ along: 'x', atMm: 80, fromMm: 20, toMm: 60 }]).layout).toBeNull();
  });
});

describe('a screw at an edge', () => {
  // EN 1995-1-1 table 8.2: 3 d with a lead hole, 12 mm for 4 mm.
  const screw = { name: 'spax', shankMm: 4, lengthMm: 38, headMm: 8, headHighMm: 3 };
  const faults = (x: number): string =>
    planOf(job, aHolding({ screw, screws: [{ x, y: 60 }] }))
      .frontUp.screws.flatMap((one) => one.faults)
      .join();

  it('keeps 3 diameters, no less and no more', () => {
    expect(faults(11.9)).toContain('from an edge');
    expect(faults(12.1)).toBe('');
  });
});

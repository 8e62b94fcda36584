import fc from 'fast-check';
import { expect } from 'vitest';
import { candidatesOf, fitTogether } from '../../src/hold/candidates.ts';
import { bestLayout } from '../../src/hold/layout.ts';
import { holdPlan, type HoldPlan } from '../../src/hold/plan.ts';
import type { PlacingPlan } from '../../src/hold/placing-plan.ts';
import type { StrapPlace } from '../../src/hold/strap-place.ts';
import type { Verdict } from '../../src/hold/verdict.ts';
import type { Holding } from '../../src/job/holding.ts';
import type { Feature, Job, StopsJob } from '../../src/job/job.ts';
import { isInside, toEdgeMm, toOutlineMm } from '../../src/plane/distance.ts';
import { boundsOf } from '../../src/plane/measure.ts';
import type { Point } from '../../src/plane/point.ts';
import { blankInLayout } from '../../src/setup/place.ts';
import { outlineOf } from '../../src/sweep/feature-outline.ts';
import { keepClearOf } from '../../src/sweep/keep-clear.ts';
import { evenly } from '../plane/evenly.ts';
import { aFeature, aJob, placed } from '../jig/a-job.ts';
import { aHolding } from './a-holding.ts';

const feature = fc
  .record({
    face: fc.constantFrom('front' as const, 'back' as const),
    at: fc.record({ x: evenly(50, 230), y: evenly(40, 140) }),
    size: evenly(12, 110),
    round: fc.boolean(),
    cut: fc.constantFrom('pocket' as const, 'profile-inside' as const, 'drill' as const),
    depthMm: evenly(1, 20),
  })
  .map(({ size, round, ...rest }) =>
    aFeature({
      ...rest,
      shape: round
        ? { kind: 'circle', diameterMm: size }
        : { kind: 'rectangle', widthMm: size, heightMm: size * 0.7, cornerRadiusMm: 3.1 },
    }),
  );

/** As many bolts as a usual bed has. */
export const inserts = {
  thread: 'M6' as const,
  first: { x: 25, y: 25 },
  pitchMm: { x: 100, y: 75 },
  count: { x: 6, y: 5 },
};

const someJob = fc.array(feature, { minLength: 1, maxLength: 3 }).map((features) =>
  aJob({
    features: features.map((one, k) => ({ ...one, name: `cut ${k}` })),
    onBed: { x: 140, y: 100 },
    inserts,
  }),
);

export function planOf(job: StopsJob, holding: Holding = aHolding()): HoldPlan {
  return holdPlan({
    job,
    holding,
    placings: placed(job),
    standingOf: () => ({ frontUp: [], backUp: [] }),
    programs: { frontUp: null, backUp: null },
  });
}

/** Places of the cutter's axis found by trying a grid, with no help from the sweep. */
function axisPlaces(cut: Feature): readonly Point<'blank'>[] {
  if (cut.cut === 'drill') return [cut.at];
  const outline = outlineOf(cut, 0.01);
  const box = boundsOf(outline);
  const radius = cut.cutter.diameterMm / 2;
  const steps = Array.from({ length: 20 }, (_, i) => i / 19);
  return steps
    .flatMap((a) =>
      steps.map((b) => ({
        x: box.lowX + a * (box.highX - box.lowX),
        y: box.lowY + b * (box.highY - box.lowY),
      })),
    )
    .filter((p) => {
      if (!isInside(p, outline)) return false;
      const edge = toEdgeMm(p, outline);
      return cut.cut === 'pocket' ? edge >= radius : Math.abs(edge - radius) < 0.5;
    });
}

/** Nothing that sampling finds comes nearer to a planned strap than the margin; how many straps were looked at. */
function expectClear(job: Job, { placing, layout }: PlacingPlan): number {
  const straps = layout?.straps ?? [];
  const { aboveTip } = job.shop.machine;
  for (const cut of job.features.filter(({ face }) => face === placing.faceUp)) {
    const places = axisPlaces(cut).map((p) => blankInLayout(job, placing.mirror, p));
    const tip = job.blank.thickMm - cut.depthMm;
    for (const { bodies } of straps)
      for (const { outline, highMm, name } of bodies) {
        const nearest = Math.min(...places.map((p) => toOutlineMm(p, outline)));
        const things = [
          { radius: 3, from: 0 },
          { radius: aboveTip.colletNut!.radiusMm, from: aboveTip.colletNut!.fromMm },
          { radius: aboveTip.spindle!.radiusMm, from: aboveTip.spindle!.fromMm },
        ];
        for (const { radius, from } of things)
          if (tip + from < highMm + 2 - 1e-6)
            expect(nearest, `${name}, ${cut.name}`).toBeGreaterThan(radius + 3 - 1e-6);
        const shoe = aboveTip.dustShoe!;
        const box = boundsOf(outline);
        if (tip + shoe.fromMm < highMm + 2 - 1e-6)
          for (const p of places)
            expect(
              p.x + shoe.xMm / 2 < box.lowX ||
                p.x - shoe.xMm / 2 > box.highX ||
                p.y + shoe.yMm / 2 < box.lowY ||
                p.y - shoe.yMm / 2 > box.highY,
            ).toBe(true);
      }
  }
  return straps.length;
}

/** Straps of every plan are clear, on the blank, over solid wood, in reach, apart, and no more than there are. */
export function expectSoundPlans(seed: number, numRuns: number): number {
  let straps = 0;
  fc.assert(
    fc.property(someJob, (job) => {
      const plan = planOf(job);
      for (const one of [plan.frontUp, plan.backUp]) {
        straps += expectClear(job, one);
        expectReachable(job, one);
        expect(one.clashes).toEqual([]);
      }
    }),
    { seed, numRuns, endOnFailure: true },
  );
  return straps;
}

function expectReachable(job: Job, { placing, layout }: PlacingPlan): void {
  const all = layout?.straps ?? [];
  expect(all.length).toBeLessThanOrEqual(4);
  for (const { pad, boltToWorkMm, boltToHeelMm, bolt } of all) {
    for (const p of pad) {
      expect(p.x).toBeGreaterThan(-1e-9);
      expect(p.y).toBeGreaterThan(-1e-9);
      expect(p.x).toBeLessThan(job.blank.widthMm + 1e-9);
      expect(p.y).toBeLessThan(job.blank.heightMm + 1e-9);
    }
    expect(boltToHeelMm).toBeGreaterThan(0);
    expect(boltToWorkMm).toBeGreaterThan(0);
    expect((bolt.onBed.x - 25) % 100).toBeCloseTo(0, 9);
    expect((bolt.onBed.y - 25) % 75).toBeCloseTo(0, 9);
    const under = job.features.filter(
      ({ face }) => face === placing.faceUp || placing.order === 'second',
    );
    for (const cut of under)
      for (const place of axisPlaces(cut).map((p) => blankInLayout(job, placing.mirror, p)))
        expect(toOutlineMm(place, pad)).toBeGreaterThan(0);
  }
  all.forEach((one, k) => {
    for (const other of all.slice(k + 1)) expect(fitTogether(one, other)).toBe(true);
  });
}

/** The chosen set holds as well as any of its size, by trying them all; how many sets were tried. */
export function expectBestOfAll(seed: number, numRuns: number): number {
  let tried = 0;
  const score = fc.array(evenly(0.05, 3), { minLength: 40, maxLength: 40 });
  fc.assert(
    fc.property(someJob, score, fc.integer({ min: 1, max: 3 }), (job, scores, count) => {
      const { frontUp } = placed(job);
      const holding = aHolding({ straps: [{ ...aHolding().straps[0]!, count }] });
      const clear = keepClearOf(job, frontUp, { by: 'features' });
      const wish = { pin: [], forbid: [] };
      // Few enough to try them all.
      const free = candidatesOf(job, holding, frontUp, clear, [], wish).free.slice(0, 9);
      const judge = (straps: readonly StrapPlace[]): Verdict => {
        const factor = straps.reduce((sum, one) => sum + scores[free.indexOf(one)]!, 0);
        const worst = { at: { x: 0, y: 0 }, pullsRad: 0, gives: 'slides' as const };
        return { factor, neededFactor: 2.5, isHeld: factor >= 2.5, worst };
      };
      const best = bestLayout({ free, wish, others: [], judge, inSteps: false });
      const all = subsets(free).filter(
        (set) =>
          set.length >= Math.min(2, count) &&
          set.length <= count &&
          set.every((a, k) => set.slice(k + 1).every((b) => fitTogether(a, b))),
      );
      tried += all.length;
      // Where no two go together, one is all there is.
      if (all.length === 0) {
        expect(best?.straps.length ?? 0).toBeLessThan(2);
        return;
      }
      const held = all.filter((set) => judge(set).isHeld);
      const fewest = Math.min(...held.map((set) => set.length));
      const among = held.length > 0 ? held.filter((set) => set.length === fewest) : all;
      const most = Math.max(...among.map((set) => judge(set).factor));
      expect(best!.search).toBe('exact');
      expect(best!.verdict.isHeld).toBe(held.length > 0);
      if (held.length > 0) expect(best!.straps).toHaveLength(fewest);
      expect(best!.verdict.factor).toBeCloseTo(most, 2);
    }),
    { seed, numRuns, endOnFailure: true },
  );
  return tried;
}

function subsets(all: readonly StrapPlace[]): readonly (readonly StrapPlace[])[] {
  return Array.from({ length: 2 ** all.length - 1 }, (_, mask) =>
    all.filter((_one, k) => ((mask + 1) >> k) % 2 === 1),
  );
}

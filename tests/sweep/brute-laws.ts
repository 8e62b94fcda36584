import fc from 'fast-check';
import { expect } from 'vitest';
import type { Feature, Job } from '../../src/job/job.ts';
import { isInside, toEdgeMm, toOutlineMm } from '../../src/plane/distance.ts';
import { boundsOf } from '../../src/plane/measure.ts';
import { moved } from '../../src/plane/move.ts';
import { rectangleOutline, type Outline } from '../../src/plane/outline.ts';
import type { Point } from '../../src/plane/point.ts';
import { blankInLayout } from '../../src/setup/place.ts';
import { clearancesOf } from '../../src/sweep/clearances.ts';
import { outlineOf } from '../../src/sweep/feature-outline.ts';
import { evenly } from '../plane/evenly.ts';
import { aFeature, aJob, placed } from '../jig/a-job.ts';

const shape: fc.Arbitrary<Feature['shape']> = fc.oneof(
  fc.record({ kind: fc.constant('circle' as const), diameterMm: evenly(8, 80) }),
  fc.record({
    kind: fc.constant('rectangle' as const),
    widthMm: evenly(8, 100),
    heightMm: evenly(8, 80),
    cornerRadiusMm: evenly(3.1, 4),
  }),
  fc.record({
    kind: fc.constant('slot' as const),
    lengthMm: evenly(20, 90),
    widthMm: evenly(6.5, 15),
  }),
);

const feature = fc
  .record({
    shape,
    face: fc.constantFrom('front' as const, 'back' as const),
    at: fc.record({ x: evenly(60, 220), y: evenly(50, 130) }),
    turnedRad: evenly(-3, 3),
    cut: fc.constantFrom('pocket' as const, 'profile-outside' as const, 'profile-inside' as const),
    depthMm: evenly(1, 23),
  })
  .map((change) => aFeature(change));

const block: fc.Arbitrary<Outline<'layout'>> = fc
  .record({ x: evenly(-20, 300), y: evenly(-20, 200), w: evenly(5, 60), h: evenly(5, 60) })
  .map(({ x, y, w, h }) => moved(rectangleOutline(w, h, 0, 0.01), { x, y }));

/** Places that the cutter's axis may be at, found by trying a grid: inside by a radius, or on the ring. */
function axisPlaces(job: Job, cut: Feature): readonly Point<'layout'>[] {
  const outline = outlineOf(cut, 0.0005);
  const box = boundsOf(outline);
  const radius = cut.cutter.diameterMm / 2;
  const onTheWay = (p: Point<'blank'>): boolean => {
    const edgeMm = toEdgeMm(p, outline);
    const inside = isInside(p, outline);
    if (cut.cut === 'pocket') return inside && edgeMm >= radius;
    const side = cut.cut === 'profile-inside' ? inside : !inside;
    return side && Math.abs(edgeMm - radius) < ringMm;
  };
  const steps = Array.from({ length: 30 }, (_, i) => i / 29);
  const mirror = cut.face === 'front' ? 'none' : 'x';
  return steps
    .flatMap((a) =>
      steps.map((b) => ({
        x: box.lowX - 4 + a * (box.highX - box.lowX + 8),
        y: box.lowY - 4 + b * (box.highY - box.lowY + 8),
      })),
    )
    .filter(onTheWay)
    .map((p) => blankInLayout(job, mirror, p));
}

/** Grid places this near to the ring stand for places on it. */
const ringMm = 0.4;

/** No disc comes over a body that was said to be beside it, nor nearer than said; how many places were tried. */
export function expectDiscsAsSaid(seed: number, numRuns: number): number {
  let tried = 0;
  fc.assert(
    fc.property(feature, block, (cut, outline) => {
      const job = aJob({ features: [cut] });
      const found = clearancesOf(job, placed(job), [
        { name: 'block', outline, lowMm: 0, highMm: 10 },
      ]);
      const places = axisPlaces(job, cut);
      tried += places.length;
      const nearest = Math.min(...places.map((p) => toOutlineMm(p, outline)));
      for (const [what, radius] of [
        ['cutter', 3],
        ['collet nut', 10],
        ['spindle', 33],
      ] as const) {
        const said = found.find((c) => c.what === what)!;
        const slack = cut.cut === 'pocket' ? 0.05 : ringMm + 0.05;
        expect(said.besideMm).toBeLessThanOrEqual(Math.max(0, nearest - radius) + slack);
        if (nearest < radius - slack) expect(said.lowestMm).not.toBeNull();
      }
    }),
    { seed, numRuns },
  );
  return tried;
}

/** No shoe comes over a body that was said to be beside it; how many came over one. */
export function expectShoesAsSaid(seed: number, numRuns: number): number {
  let over = 0;
  fc.assert(
    fc.property(feature, block, (cut, outline) => {
      const job = aJob({ features: [cut] });
      const said = clearancesOf(job, placed(job), [
        { name: 'block', outline, lowMm: 0, highMm: 10 },
      ]).find((c) => c.what === 'dust shoe')!;
      const body = boundsOf(outline);
      const slack = cut.cut === 'pocket' ? 0.05 : ringMm + 0.05;
      const hit = axisPlaces(job, cut).some(
        (p) =>
          p.x + 55 - slack > body.lowX &&
          p.x - 55 + slack < body.highX &&
          p.y + 45 - slack > body.lowY &&
          p.y - 45 + slack < body.highY,
      );
      if (hit) {
        over += 1;
        expect(said.lowestMm).toBeCloseTo(24 - cut.depthMm + 12, 9);
      }
    }),
    { seed, numRuns },
  );
  return over;
}

/** Moving cut and body together changes no clearance. */
export function expectMovedTheSame(seed: number, numRuns: number): void {
  fc.assert(
    fc.property(feature, block, evenly(-30, 30), evenly(-30, 30), (cut, outline, dx, dy) => {
      const body = { name: 'block', outline, lowMm: 0, highMm: 10 };
      const job = aJob({ features: [cut] });
      // The turned blank carries a feature the other way in x.
      const by = { x: cut.face === 'front' ? dx : -dx, y: dy };
      const there = aJob({
        features: [{ ...cut, at: { x: cut.at.x + by.x, y: cut.at.y + by.y } }],
      });
      const before = clearancesOf(job, placed(job), [body]);
      const after = clearancesOf(there, placed(there), [
        { ...body, outline: moved(outline, { x: dx, y: dy }) },
      ]);
      after.forEach((c, i) => {
        const was = before[i]!;
        // Places on the clipping grid differ by its 1e-6 mm.
        expect(Math.abs(c.besideMm - was.besideMm)).toBeLessThan(1e-5);
        if (was.besideMm > 1e-5 || c.besideMm > 1e-5) expect(c.lowestMm).toBeNull();
        else expect(c.feature).toBe(was.feature);
      });
    }),
    { seed, numRuns },
  );
}

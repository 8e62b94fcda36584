import { describe, expect, it } from 'vitest';
import { bedAdvice } from '../../src/measure/bed-advice.ts';
import {
  acrossPart,
  effectOnNeeds,
  onMeasuredBed,
  partPlaces,
} from '../../src/measure/bed-effect.ts';
import { bedHeightsOf } from '../../src/measure/bed-surface.ts';
import type { Job } from '../../src/job/job.ts';
import { surveyOf, type BedSurvey } from '../../src/measure/bed-survey.ts';
import { half95 } from '../../src/measure/estimate.ts';
import { skimPlan } from '../../src/measure/skim.ts';
import { expectedRange } from '../../src/num/expected-range.ts';
import { FLAT6, plainJob } from '../setup/plain-job.ts';
import { luckOf, places, readWith } from './shop-beds.ts';

const bed = (leanX: number, leanY: number) => ({ leanX, leanY, bowMm: 0, twist: 0 });
const survey = (leanX: number, leanY: number): BedSurvey =>
  surveyOf(readWith(bed(leanX, leanY), places(4, 3), luckOf(5), 0), 0.006)!;

describe('a survey of the bed', () => {
  it('expects of noise alone the range that control charts print', () => {
    // Source: textbook table A.22 (d2 for n = 2, 3, 5, 10; uncertainty.md section 8).
    [
      [2, 1.128379],
      [3, 1.692569],
      [5, 2.325929],
      [10, 3.077505],
    ].forEach(([n, d2]) => {
      expect(expectedRange(n!)).toBeCloseTo(d2!, 5);
    });
  });

  it('finds the leans of a true plane, no better known than the gauge allows', () => {
    const { leanX, leanY, minimumZoneMm, rangeMm, uneven } = survey(0.001, -0.0004);
    expect(leanX.value).toBeCloseTo(0.001, 12);
    expect(leanY.value).toBeCloseTo(-0.0004, 12);
    expect(minimumZoneMm).toBeLessThan(1e-12);
    expect(rangeMm).toBeCloseTo(0.001 * 520 + 0.0004 * 340, 12);
    expect(uneven.sd).toBe(0);
    // Closed form: gauge sd over the root of the sum of squared distances from the middle.
    const squares = places(4, 3).reduce((sum, { x }) => sum + (x - 300) ** 2, 0);
    expect(leanX.sd).toBeCloseTo(0.006 / Math.sqrt(squares), 12);
    expect(half95(leanX)).toBeCloseTo(1.959964 * leanX.sd, 9);
  });

  it('gives intervals that hold the true lean as often as they say', () => {
    const trials = 150;
    let held = 0;
    for (let seed = 0; seed < trials; seed++) {
      const heights = readWith(bed(0.001, 0), places(3, 2), luckOf(3000 + seed), 0.02);
      // The gauge is believed to be perfect, so that the scatter alone must tell.
      const { leanX } = surveyOf(heights, 0)!;
      if (Math.abs(leanX.value - 0.001) < half95(leanX)) held++;
    }
    const se = Math.sqrt(0.95 * 0.05 * trials);
    expect(Math.abs(held - 0.95 * trials)).toBeLessThan(4 * se);
  });
});

const TOLD = { measured: '2026-11-20', because: 'readings' };
/** A job on a bed that was read with a perfect gauge at the places of `survey`, a bump added to some. */
const onBed = (job: Job, leanX: number, leanY: number, bumps: readonly number[] = []): Job =>
  onMeasuredBed(
    job,
    bedHeightsOf(
      survey(leanX, leanY).heights.map((one, k) => ({
        ...one,
        heightMm: one.heightMm + (bumps[k] ?? 0),
      })),
      0,
      TOLD,
    ),
  );

describe('what a bed does to a job', () => {
  const at = { x: 100, y: 60 };
  const pocket = (name: string, face: 'front' | 'back') => ({
    name,
    face,
    shape: { kind: 'circle', diameterMm: 0.02 } as const,
    at,
    turnedRad: 0,
    cut: 'pocket' as const,
    depthMm: 8,
    through: false,
    cutter: FLAT6,
  });
  const job = plainJob({
    features: [pocket('dish', 'front'), pocket('foot', 'back')],
    needs: [
      {
        kind: 'web',
        name: 'floor',
        features: ['dish', 'foot'],
        limits: { lowMm: 7, highMm: null },
      },
      { kind: 'depth', name: 'deep', feature: 'dish', limits: { lowMm: 7.9, highMm: 8.1 } },
    ],
  });

  it('is the row of the table of depths: the web loses k (W - x_t - x_t)', () => {
    // Source: registration.md section 2, "bed leans k along x": -k (W - x_t - x_t'), z touched at the middle.
    const k = 0.001;
    const [web, depth] = effectOnNeeds(onBed(job, k, 0));
    expect(web!.effect.value).toBeCloseTo(0, 4);
    expect(web!.margin).toBeCloseTo(1, 9);
    expect(depth!.effect.value).toBeCloseTo(k * (100 - 140), 4);
    expect(depth!.margin).toBeCloseTo(0.1, 9);
    const [, leaningY] = [0, effectOnNeeds(onBed(job, 0, k))];
    // Along y both sides lean alike: -k (2y - y_t - y_t').
    expect(leaningY[0]!.effect.value).toBeCloseTo(-k * (2 * 60 - 180), 4);
    expect(leaningY[0]!.effect.sd).toBeGreaterThan(0);
  });

  it('reaches from corner to corner of the blank', () => {
    const [front, back] = acrossPart(onBed(job, 0.001, 0));
    expect([front!.fromMm, front!.toMm].map((mm) => Number(mm.toFixed(6)))).toEqual([-0.14, 0.14]);
    expect(back!.faceUp).toBe('back');
  });

  it('is what the bed does at the part, not what its plane would do: a bump read under the feature makes the cut as much deeper', () => {
    // Rule 8: deeper by the bed under the feature less the bed where z was touched. The readings stand at
    // 386.67, 200 (bump) and elsewhere; the corner is laid so that the feature comes to lie on the bump.
    const bump = places(4, 3)[6]!;
    const laid = (mm: number): Job => ({
      ...onBed(job, 0, 0, [0, 0, 0, 0, 0, 0, mm]),
      onBed: {
        value: { x: bump.x - at.x, y: bump.y - at.y },
        origin: { kind: 'stated', file: '', line: 1 },
      },
    });
    const none = effectOnNeeds(laid(0.2));
    const deep = none.find(({ need }) => need === 'deep')!;
    const places2 = partPlaces(laid(0.2), laid(0.2).shop.bed.heights!);
    const under = places2.find((one) => Math.abs(one.at.x - bump.x) < 1e-9)!;
    const touched = places2.find((one) => one !== under)!;
    // On the reading itself the surface is the reading, over the mean of all 12.
    expect(under.height.value).toBeCloseTo(0.2 - 0.2 / 12, 3);
    expect(under.height.sd).toBeLessThan(0.002);
    expect(deep.effect.value).toBeCloseTo(under.height.value - touched.height.value, 6);
    // By the plane alone it would be a fraction of that.
    expect(deep.effect.value).toBeGreaterThan(0.05);
    const lower = effectOnNeeds(laid(-0.2)).find(({ need }) => need === 'deep')!;
    expect(lower.effect.value).toBeCloseTo(-deep.effect.value, 6);
  });

  it('decides with the range what to do', () => {
    const none = { kind: 'no stock' } as const;
    const advise = (
      lean: number,
      boardMm: number,
      effects: ReturnType<typeof effectOnNeeds> | null,
    ) => {
      const found = survey(lean, 0);
      return bedAdvice(found, none, skimPlan(found, boardMm), effects);
    };
    expect(advise(0.0001, 18, null)).toMatchObject({ kind: 'leave alone', because: 'parallel' });
    expect(advise(0.001, 18, null)).toMatchObject({ kind: 'skim' });
    expect(advise(0.001, 9, null)).toMatchObject({ kind: 'new board' });
    const wide = effectOnNeeds(onBed(plainJob({ ...job, needs: [job.needs[0]!] }), 0.001, 0));
    expect(advise(0.001, 18, wide)).toMatchObject({ kind: 'leave alone', because: 'needs' });
    const { depthMm, thinnestMm } = skimPlan(survey(0.001, 0), 18);
    expect(depthMm).toBeCloseTo(0.62, 9);
    expect(depthMm + thinnestMm).toBeCloseTo(18, 9);
  });
});

// Regions of JCGM 102 and risks of JCGM 106; exact values: tests/reference/uncertainty.md 2 and 3.
import { describe, expect, it } from 'vitest';
import { BATCH } from '../../src/num/batch.ts';
import type { Judged } from '../../src/setup/judged.ts';
import { measuredWith } from '../../src/stackup/measured.ts';
import { joinPlane, planeOfSome } from '../../src/stackup/plane-moments.ts';
import { regionOf } from '../../src/stackup/region.ts';
import type { Region } from '../../src/stackup/prediction.ts';
import type { Asked } from '../../src/stackup/figure.ts';
import type { Model } from '../../src/stackup/model.ts';
import { runTrials } from '../../src/stackup/trials.ts';
import { FIRST, modelOfFunction, normal, tried } from './a-model.ts';

const N = 40 * BATCH;

function region(model: Model): Region {
  const [x, y] = runTrials(model, 1, N);
  const plane = planeOfSome(new Float64Array(0), 0, 0);
  const out = new Float64Array(2 * BATCH);
  for (let from = 0; from < N; from += BATCH) {
    out.set(x!.subarray(from, from + BATCH));
    out.set(y!.subarray(from, from + BATCH), BATCH);
    joinPlane(plane, planeOfSome(out, 0, BATCH));
  }
  return regionOf(plane, x!, y!);
}

/** Y1 = X1 + X3, Y2 = X2 + X3 with X3 of sd `s`: correlation s^2 / (1 + s^2). */
const shared = (s: number): Model =>
  modelOfFunction([normal(0, 1), normal(0, 1), normal(0, s)], ([a, b, c]) => [a! + c!, b! + c!], 2);

describe('95 % regions of a normal vector (JCGM 102, shape of 9.2)', () => {
  it.each([
    [1e-9, 2.236477],
    [1, 2.212128],
    [3, 2.108143],
  ])('with a shared part of sd %d', (s, kq) => {
    const { ellipse, rectangle } = region(shared(s));
    // Density of the distance at its 95 % point: k exp(-k^2 / 2) = 0.1224; that of the larger of two, about 0.13.
    const se = Math.sqrt((0.05 * 0.95) / N) / 0.12;
    expect(Math.abs(ellipse.kp - 2.447747)).toBeLessThan(4 * se);
    expect(Math.abs(rectangle.kq - kq)).toBeLessThan(4 * se);
    const sd = Math.sqrt(1 + s * s);
    expect(Math.abs(rectangle.halfXMm / (kq * sd) - 1)).toBeLessThan(
      4 * (se + 1 / Math.sqrt(2 * N)),
    );
    if (s >= 1) {
      // The long axis lies along the diagonal: variances 1 + 2 s^2 and 1.
      expect(Math.abs(ellipse.turnRad - Math.PI / 4)).toBeLessThan(0.05);
      expect(
        Math.abs(ellipse.alongMm / ellipse.acrossMm / Math.sqrt(1 + 2 * s * s) - 1),
      ).toBeLessThan(0.03);
    }
  });

  it('are flat where nothing varies across, and nothing where nothing varies', () => {
    const flat = region(modelOfFunction([normal(0, 1)], ([x]) => [x!, 0], 2));
    expect(flat.ellipse.acrossMm).toBe(0);
    expect(Math.abs(flat.ellipse.kp - 1.96)).toBeLessThan(
      (4 * Math.sqrt((0.05 * 0.95) / N)) / 0.117,
    );
    expect(flat.rectangle.halfYMm).toBe(0);
    const none = region(modelOfFunction([normal(0, 1)], () => [0, 0], 2));
    expect(none).toEqual({
      ellipse: { kp: 0, alongMm: 0, acrossMm: 0, turnRad: 0 },
      rectangle: { kq: 0, halfXMm: 0, halfYMm: 0 },
    });
  });
});

describe('the length of a vector near nought (JCGM 102, 9.3)', () => {
  it.each([
    [0.001, 0, 0.01256445, 0.00656768],
    [0.01, 0, 0.01548572, 0.00775837],
    [0.1, 0, 0.10050127, 0.00997471],
    [0.001, 0.9, 0.01173281, 0.00795872],
    [0.01, 0.9, 0.01528908, 0.00813905],
  ])('x1 = %d, correlation %d', (x1, rho, mean, sd) => {
    const asked: Asked = { ...FIRST, figures: [{ kind: 'length', x: 0 }] };
    const model = modelOfFunction(
      [normal(0, 0.01), normal(0, 0.01)],
      ([a, b]) => [x1 + a!, rho * a! + Math.sqrt(1 - rho * rho) * b!],
      2,
    );
    const found = tried(model, 100_000, asked).figure(0);
    expect(Math.abs(found.mean - mean)).toBeLessThan((4 * sd) / Math.sqrt(1e5));
    // Kurtosis below 5 for all of these.
    expect(Math.abs(found.sd - sd)).toBeLessThan(4 * sd * Math.sqrt(4 / 4e5));
  });
});

describe('measuring with a gauge', () => {
  const need = { kind: 'wall', name: 'resistance' } as Extract<Judged, { shape: 'plain' }>['need'];
  const judged = (low: number | null, high: number | null): Judged => ({
    shape: 'plain',
    need,
    at: 0,
    columnCount: 1,
    unit: 'mm',
    low,
    high,
  });

  it('has the risks of JCGM 106, 9.5: resistors N(1500, 0.12), gauge 0.04, limits 0.2', () => {
    const kept = runTrials(
      modelOfFunction([normal(1500, 0.12)], ([x]) => [x!]),
      1,
      N,
    );
    // The guard is twice the gauge's uncertainty: w = 0.08. Exact (recomputed there): R_C, R_P for w = 0 and 0.08.
    const { asIs, guardMm, guarded } = measuredWith(0.04, judged(1499.8, 1500.2), kept, 1);
    expect(guardMm).toBeCloseTo(0.08, 12);
    for (const [risk, exact] of [
      [asIs.falseAccept, 0.018942],
      [asIs.falseReject, 0.037208],
      [guarded.falseAccept, 0.00046863],
      [guarded.falseReject, 0.24767],
    ] as const)
      expect(Math.abs(risk - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / N));
    expect(asIs.accepted - asIs.falseAccept + asIs.falseReject).toBeCloseTo(0.9044192954543706, 2);
  });

  it('reads x and y of a vector with an error each', () => {
    const kept = runTrials(
      modelOfFunction([normal(0, 0.1), normal(0, 0.1)], ([x, y]) => [x!, y!], 2),
      1,
      N,
    );
    const radial: Judged = {
      shape: 'radial',
      need: { kind: 'misalignment', name: 'corner', at: { x: 0, y: 0 }, withinMm: 0.2 } as never,
      x: 0,
      columnCount: 2,
      high: 0.2,
    };
    const { asIs, guarded } = measuredWith(0.03, radial, kept, 1);
    // What reads within the limit is Rayleigh of both variances: 1 - exp(-r^2 / 2 (s^2 + u^2)) (derived).
    const within = (r: number): number => 1 - Math.exp((-r * r) / (2 * (0.01 + 0.0009)));
    expect(Math.abs(asIs.accepted - within(0.2))).toBeLessThan(4 * Math.sqrt(0.14 / N));
    expect(Math.abs(guarded.accepted - within(0.14))).toBeLessThan(4 * Math.sqrt(0.25 / N));
    expect(guarded.falseAccept).toBeLessThan(asIs.falseAccept / 5);
    expect(guarded.falseReject).toBeGreaterThan(asIs.falseReject);
  });

  it('chances within limits: JCGM 106, 7.3 and 7.4 (values from memory, recomputed)', () => {
    const chance = (y: number, u: number, low: number | null, high: number | null): number => {
      const asked: Asked = { ...FIRST, questions: [{ lowest: 0, highest: 0, low, high }] };
      const totals = tried(
        modelOfFunction([normal(y, u)], ([x]) => [x!]),
        N,
        asked,
      );
      return totals.good[0]! / totals.trials();
    };
    for (const [found, exact] of [
      [chance(-5.47, 0.05, null, -5.4), 0.919243],
      [chance(13.6, 1.8, 12.5, 16.3), 0.66263],
    ] as const)
      expect(Math.abs(found - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / N));
  });
});

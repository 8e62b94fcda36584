// The fast path against exact values and against plain trials.
import { describe, expect, it } from 'vitest';
import { agree, raw, sharesAt } from '../../../src/stackup/fast/estimate.ts';
import { fastAnswer, type FastAnswer } from '../../../src/stackup/fast/fast.ts';
import { placed, pointsOf, REPLICATES } from '../../../src/stackup/fast/points.ts';
import { smoothed } from '../../../src/stackup/fast/shares-below.ts';
import { constantSlopes } from '../../../src/stackup/fast/constant-slopes.ts';
import type { Asked } from '../../../src/stackup/figure.ts';
import type { Model } from '../../../src/stackup/model.ts';
import { FIRST, modelOfFunction, normal, rectangular, tried } from '../a-model.ts';

const judged = (low: number | null, high: number | null): Asked => ({
  ...FIRST,
  questions: [{ lowest: 0, highest: 0, low, high }],
});
const answered = (model: Model, asked: Asked, count = 256): FastAnswer =>
  fastAnswer(model, asked, pointsOf(model, 1, count), 1);

/** Four standard errors (99 % half-widths are 2.95), and a floor for what two secant steps leave of exact numbers. */
const near = (found: { value: number; sure: number }, exact: number, floor = 1e-6): void => {
  expect(Math.abs(found.value - exact)).toBeLessThan(1.4 * found.sure + floor);
};

describe('the fast path', () => {
  it('of a sum of normals is exact, to one in a hundred thousand bad', () => {
    const model = modelOfFunction(
      [1, 2, 0.5, 1.5].map((sd) => normal(0.1, sd)),
      (x) => [x.reduce((sum, one) => sum + one, 0)],
    );
    const u = Math.sqrt(1 + 4 + 0.25 + 2.25);
    const { figures, chances, digits } = answered(model, judged(null, 0.4 + 4.264890794 * u));
    expect(figures[0]).toMatchObject({ isSmoothed: true });
    near(figures[0]!.mean, 0.4);
    near(figures[0]!.low, 0.4 - 1.959963985 * u, 1e-4 * u);
    near(figures[0]!.high, 0.4 + 1.959963985 * u, 1e-4 * u);
    expect(Math.abs(1 - chances[0]!.value - 1e-5)).toBeLessThan(1e-8);
    expect(digits).toBeGreaterThanOrEqual(2);
  });

  it('has the ends of JCGM 101, 9.2.3 and 9.2.4', () => {
    const R3 = Math.sqrt(3);
    for (const [sizes, end] of [
      [[1, 1, 1, 1], 3.879407],
      [[1, 1, 1, 10], 17.015814],
    ] as const) {
      const model = modelOfFunction(
        sizes.map((size) => rectangular(-size * R3, size * R3)),
        (x) => [x.reduce((sum, one) => sum + one, 0)],
      );
      const [figure] = answered(model, FIRST).figures;
      near(figure!.low, -end, 1e-4 * end);
      near(figure!.high, end, 1e-4 * end);
    }
  });

  it('finds bad parts beyond a kink as plain trials do, with a hundredth of the evaluations', () => {
    const model = modelOfFunction(
      [normal(0, 1), normal(0, 0.7), rectangular(-1, 1)],
      ([x, y, z]) => [Math.abs(x!) + y! + 0.5 * z!],
    );
    const asked = judged(-1.2, 3.2);
    const { figures, chances, evaluations } = answered(model, asked);
    expect(figures[0]!.isSmoothed).toBe(true);
    const totals = tried(model, 400_000, asked, 5);
    const plain = totals.figure(0);
    const bad = 1 - totals.good[0]! / totals.trials();
    const se = Math.sqrt((bad * (1 - bad)) / totals.trials());
    expect(Math.abs(1 - chances[0]!.value - bad)).toBeLessThan(1.4 * chances[0]!.sure + 4 * se);
    for (const [found, end, sure] of [
      [figures[0]!.low, plain.interval95[0], plain.sure.low],
      [figures[0]!.high, plain.interval95[1], plain.sure.high],
    ] as const)
      expect(Math.abs(found.value - end)).toBeLessThan(1.4 * (found.sure + sure));
    // Its own doubt is that of so many times as many trials.
    const worth = (bad * (1 - bad) * 2.58 ** 2) / chances[0]!.sure ** 2 / evaluations;
    expect(worth).toBeGreaterThan(20);
  });

  it('integrates a length along its longer side: Rayleigh and Rice', () => {
    const asked: Asked = {
      figures: [{ kind: 'length', x: 0 }],
      questions: [{ lowest: 0, highest: 0, low: null, high: 3 }],
    };
    // Quantiles: tests/reference/uncertainty.md 8; P(r > 3) = exp(-4.5).
    const rayleigh = modelOfFunction([normal(0, 1), normal(0, 1)], ([x, y]) => [x!, y!], 2);
    const { figures, chances } = answered(rayleigh, asked);
    expect(figures[0]!.isSmoothed).toBe(true);
    near(figures[0]!.high, Math.sqrt(-2 * Math.log(0.025)), 1e-4);
    near(figures[0]!.low, Math.sqrt(-2 * Math.log(0.975)), 1e-4);
    near(chances[0]!, 1 - Math.exp(-4.5), 1e-5);
    const rice = modelOfFunction([normal(2, 1), normal(0, 1)], ([x, y]) => [x!, y!], 2);
    near(answered(rice, asked).figures[0]!.mean, 2.2723834, 1e-5);
    near(answered(rice, asked).figures[0]!.sd, 0.9144799, 1e-4);
  });

  it('tells nought of what never varies', () => {
    const { figures, chances } = answered(
      modelOfFunction([normal(0, 1)], () => [5]),
      judged(4, null),
    );
    expect(figures[0]!.low).toEqual({ value: 5, sure: 0 });
    expect(chances[0]).toEqual({ value: 1, sure: 0 });
  });

  it('moves smoothly and keeps its points when a spread changes', () => {
    const at = (sd: number): Model =>
      modelOfFunction([normal(0, sd), normal(0, 1)], ([x, y]) => [Math.abs(x!) + y!]);
    const points = pointsOf(at(1), 1, 256);
    const bad = [1, 1.001, 1.002].map(
      (sd) => 1 - fastAnswer(at(sd), judged(null, 3), points, 1).chances[0]!.value,
    );
    expect(bad[1]).toBeGreaterThan(bad[0]!);
    expect(bad[2]! - bad[1]!).toBeCloseTo(bad[1]! - bad[0]!, 5);
  });
});

describe('smoothing that is wrong', () => {
  it('is noticed: a kinked input passed off as one of constant slope', () => {
    const model = modelOfFunction([normal(0, 1), normal(0, 1)], ([x, y]) => [
      Math.abs(x!) + 0.3 * y!,
    ]);
    const count = 512;
    const { standard } = pointsOf(model, 1, count);
    const draws = model.inputs.map(({ distribution }, k) => placed(distribution, standard[k]!));
    const values = draws[0]!.map((x, i) => Math.abs(x) + 0.3 * draws[1]![i]!);
    const evaluated = { draws, results: [values] };
    const sd = 0.67;
    const share = (slopes: readonly { input: number; slope: number }[]): Float64Array =>
      sharesAt(smoothed(model, { kind: 'column', at: 0 }, [slopes], evaluated, sd)!, 1.8, count);
    const rough = sharesAt(raw(values), 1.8, count);
    expect(rough).toHaveLength(REPLICATES);
    expect(agree(share([{ input: 1, slope: 0.3 }]), rough, count)).toBe(true);
    expect(agree(share([{ input: 0, slope: 0.5 }]), rough, count)).toBe(false);
  });

  it('is not begun where slopes wander', () => {
    const model = modelOfFunction([normal(0, 1), normal(0, 1), normal(0, 1)], ([x, y, z]) => [
      x! * y! + z! + Math.abs(x!),
    ]);
    expect(constantSlopes(model, 1, [1.5])[0]!.map(({ input }) => input)).toEqual([2]);
  });
});

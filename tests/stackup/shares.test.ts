// Variance shares against the published functions; exact values: tests/reference/uncertainty.md 5.
import { describe, expect, it } from 'vitest';
import { BATCH } from '../../src/num/batch.ts';
import { normalShareBelow } from '../../src/num/textbook.ts';
import { badShares } from '../../src/stackup/bad-shares.ts';
import type { Asked, Figure } from '../../src/stackup/figure.ts';
import type { Model } from '../../src/stackup/model.ts';
import { constantSlopes } from '../../src/stackup/fast/constant-slopes.ts';
import { shiftedGroups } from '../../src/stackup/share-shifts.ts';
import { varianceShares, type FigureShares } from '../../src/stackup/shares.ts';
import { runTrials } from '../../src/stackup/trials.ts';
import { FIRST, modelOfFunction, normal, rectangular } from './a-model.ts';

const ONE: readonly Figure[] = [{ kind: 'column', at: 0 }];

/** Of each input by itself. */
function sharesOf(model: Model, batches: number, seed = 1): FigureShares {
  const each = model.inputs.map((_, k) => [k]);
  return varianceShares(model, each, each.length, ONE, seed, batches)[0]!;
}

function expectShares(
  found: FigureShares,
  totals: readonly number[],
  firsts: readonly number[],
  batches: number,
): void {
  // The variance that all are divided by is itself known to about 2 / sqrt(2 n) of it.
  const byVariance = 2 / Math.sqrt(2 * batches * BATCH);
  totals.forEach((total, k) => {
    const { share, se, first, firstSe } = found.groups[k]!;
    expect(Math.abs(share - total)).toBeLessThan(4 * Math.hypot(se, total * byVariance));
    expect(Math.abs(first - firsts[k]!)).toBeLessThan(
      4 * Math.hypot(firstSe, firsts[k]! * byVariance),
    );
  });
  const sum = totals.reduce((all, total) => all + total, 0);
  expect(Math.abs(found.sum - sum)).toBeLessThan(4 * Math.hypot(found.sumSe, sum * byVariance));
}

describe('variance shares', () => {
  const full = rectangular(-Math.PI, Math.PI);
  it.each([
    [7, 0.1, [0.5575889, 0.4424111, 0.2436837], [0.3139052, 0.4424111, 0]],
    [7, 0.05, [0.3131054, 0.6868946, 0.0945868], [0.2185186, 0.6868946, 0]],
  ] as const)('are those of Ishigami, a = %d, b = %d', (a, b, totals, firsts) => {
    const model = modelOfFunction([full, full, full], ([x, y, z]) => [
      Math.sin(x!) + a * Math.sin(y!) ** 2 + b * z! ** 4 * Math.sin(x!),
    ]);
    const found = sharesOf(model, 32);
    expectShares(found, totals, firsts, 32);
    expect(Math.max(...found.groups.map(({ se, firstSe }) => Math.max(se, firstSe)))).toBeLessThan(
      0.02,
    );
  });

  it("are those of Sobol's g", () => {
    const a = [0, 1, 4.5, 9, 99, 99, 99, 99];
    const unit = rectangular(0, 1);
    const model = modelOfFunction(
      a.map(() => unit),
      (x) => [
        x.reduce((product, one, k) => (product * (Math.abs(4 * one - 2) + a[k]!)) / (1 + a[k]!), 1),
      ],
    );
    expectShares(
      sharesOf(model, 32),
      [0.787144, 0.242198, 0.0343169, 0.0104604, ...[4, 5, 6, 7].map(() => 1.04949e-4)],
      [0.716192, 0.179048, 0.0236758, 0.00716192, ...[4, 5, 6, 7].map(() => 7.16192e-5)],
      32,
    );
  });

  it('add up to 1 for a sum, and to more where two act together', () => {
    const sum = sharesOf(
      modelOfFunction([normal(0, 1), normal(0, 2)], ([x, y]) => [x! + y!]),
      8,
    );
    expect(Math.abs(sum.sum - 1)).toBeLessThan(4 * sum.sumSe + 8 / Math.sqrt(2 * 8 * BATCH));
    // A product of two: each has a hand in all of it, and neither does anything by itself.
    const product = sharesOf(
      modelOfFunction([normal(0, 1), normal(0, 1)], ([x, y]) => [x! * y!]),
      8,
    );
    expect(product.sum).toBeGreaterThan(1.5);
    expect(Math.abs(product.groups[0]!.first)).toBeLessThan(4 * product.groups[0]!.firstSe);
  });

  it('are nil for an input without effect, and nil all over for a constant', () => {
    const model = modelOfFunction([normal(0, 1), normal(0, 1)], ([x]) => [x!, 3], 2);
    const [one, constant] = varianceShares(
      model,
      [[0], [1]],
      2,
      [
        { kind: 'column', at: 0 },
        { kind: 'column', at: 1 },
      ],
      1,
      4,
    );
    const nil = { share: 0, se: 0, first: 0, firstSe: 0 };
    expect(one!.groups[1]).toEqual(nil);
    expect(constant).toEqual({ groups: [nil, nil], sum: 0, sumSe: 0 });
  });
});

describe('groups of constant slope', () => {
  const kinked = modelOfFunction([normal(0, 1), normal(0, 1), normal(0, 1)], ([x, y, z]) => [
    x! + 6 * Math.max(0, y! - 2.2) + 0.5 * z!,
  ]);
  const straight = modelOfFunction([normal(0, 1), normal(0, 2)], ([x, y]) => [x! - 3 * y!]);

  it('are shifted, exactly', () => {
    const shifts = shiftedGroups(straight, [[0], [1]], ONE, 1);
    expect(shifts.every((shift) => shift !== null)).toBe(true);
    const { groups } = sharesOf(straight, 4);
    [1 / 37, 36 / 37].forEach((share, k) => {
      expect(Math.abs(groups[k]!.share - share)).toBeLessThan(4 * groups[k]!.se + 1e-3);
    });
  });

  it('that look so, with a kink that few trials reach, are found out by drawing all afresh at once', () => {
    // No look at 1.5 standard deviations meets the kink, so the slopes alone say that y has no effect.
    const seed = 2;
    const slopes = constantSlopes(kinked, seed, [1]);
    expect(slopes[0]!.map(({ input }) => input)).toContain(1);
    expect(shiftedGroups(kinked, [[0], [1], [2]], ONE, seed)).toEqual([null, null, null]);
    // Variance of 6 (y - 2.2)+ by quadrature (derived here).
    let [first, second] = [0, 0];
    for (let y = 2.2; y < 9; y += 1e-4) {
      const density = (Math.exp((-y * y) / 2) / Math.sqrt(2 * Math.PI)) * 1e-4;
      first += 6 * (y - 2.2) * density;
      second += 36 * (y - 2.2) ** 2 * density;
    }
    const own = second - first * first;
    const { share, se } = sharesOf(kinked, 16, seed).groups[1]!;
    expect(Math.abs(share - own / (1 + 0.25 + own))).toBeLessThan(4 * Math.max(se, 0.005));
  });
});

describe('shares of the bad parts', () => {
  it('are the chances that drawing one input anew mends a bad part', () => {
    // x + y of sd 1 and 2, bad above 4.5: P(x' + y <= 4.5 given x + y > 4.5), by quadrature over y (derived here).
    const [sx, sy, high] = [1, 2, 4.5];
    const asked: Asked = { ...FIRST, questions: [{ lowest: 0, highest: 0, low: null, high }] };
    const model = modelOfFunction([normal(0, sx), normal(0, sy)], ([x, y]) => [x! + y!]);
    const kept = runTrials(model, 1, 20 * BATCH);
    const [found] = badShares(model, { asked, seed: 1, batchTrials: BATCH }, kept, [
      [0],
      [1],
      [0, 1],
    ]);
    const bothBad = (other: number, own: number): number => {
      let sum = 0;
      for (let k = 0; k < 4000; k++) {
        const z = -8 + (16 * (k + 0.5)) / 4000;
        const beyond = normalShareBelow((own * z - high) / other);
        sum += beyond * beyond * (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * (16 / 4000);
      }
      return sum;
    };
    const bad = normalShareBelow(-high / Math.hypot(sx, sy));
    const exact = [bothBad(sx, sy), bothBad(sy, sx), bad * bad].map(
      (both) => (1 - both / bad) / (1 - bad),
    );
    exact.forEach((share, g) => {
      expect(Math.abs(found![g]!.share - share)).toBeLessThan(4 * Math.max(found![g]!.se, 0.01));
    });
    expect(found![1]!.share).toBeGreaterThan(found![0]!.share + 0.2);
  });

  it('are not told of a few bad ones', () => {
    const asked: Asked = { ...FIRST, questions: [{ lowest: 0, highest: 0, low: null, high: 4 }] };
    const model = modelOfFunction([normal(0, 1)], ([x]) => [x!]);
    expect(
      badShares(model, { asked, seed: 1, batchTrials: BATCH }, runTrials(model, 1, 5000), [[0]]),
    ).toEqual([null]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../src/num/least-squares.ts';
import { linearSolve } from '../../src/num/linear-solve.ts';
import { nullSpace } from '../../src/num/null-space.ts';
import { chiSquareQuantile, studentShareBelow } from '../../src/num/textbook.ts';
import { STRD } from './strd.ts';

const digitsOf = (value: number, certified: number): number =>
  value === certified ? 16 : -Math.log10(Math.abs((value - certified) / certified));

describe('least squares', () => {
  // Source: NIST StRD, linear regression, certified values (uncertainty.md section 7).
  it.each(STRD)('finds the certified values of NIST StRD $name', (set) => {
    const fit = leastSquares(set.rows, set.readings)!;
    set.coefficients.forEach((value, k) => {
      expect(digitsOf(fit.coefficients[k]!, value)).toBeGreaterThan(set.digits);
    });
    expect(digitsOf(fit.residualSd, set.residualSd)).toBeGreaterThan(set.digits);
    set.sds.forEach((sd, k) => {
      expect(digitsOf(fit.residualSd * Math.sqrt(fit.unscaled[k]![k]!), sd)).toBeGreaterThan(
        set.digits,
      );
    });
  });

  it('leaves residuals square to every column, and leverages that add up to the columns', () => {
    const number = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number, number, number), { minLength: 4, maxLength: 12 }),
        (readings) => {
          const rows = readings.map(([x, y]) => [1, x, y]);
          const fit = leastSquares(
            rows,
            readings.map(([, , z]) => z),
          );
          fc.pre(fit !== null && Math.max(...fit.unscaled.map((row, k) => row[k]!)) < 1e3);
          for (let j = 0; j < 3; j++) {
            const off = fit.residuals.reduce((sum, r, i) => sum + r * rows[i]![j]!, 0);
            expect(Math.abs(off)).toBeLessThan(1e-9 * 100 * 100 * rows.length);
          }
          expect(fit.leverages.reduce((sum, h) => sum + h, 0)).toBeCloseTo(3, 9);
        },
      ),
      { seed: 7, numRuns: 60 },
    );
  });

  it('fits a column that stands alone, whatever its sign', () => {
    expect(leastSquares([[-1], [0], [0]], [2, 1, 1])!.coefficients).toEqual([-2]);
    expect(leastSquares([[1], [0], [0]], [2, 1, 1])!.coefficients).toEqual([2]);
  });

  it('says when columns cannot be told apart, and when there are too few readings', () => {
    expect(
      leastSquares(
        [0, 1, 2, 3].map((x) => [1, x, 2 * x + 1]),
        [0, 1, 2, 4],
      ),
    ).toBeNull();
    expect(leastSquares([[1, 2]], [3])).toBeNull();
    expect(leastSquares([[0], [0]], [3, 4])).toBeNull();
  });
});

describe('null space', () => {
  it('names the change that no reading notices', () => {
    // Readings all at y = 4: a constant and a lean along y cannot be told apart.
    const rows = [0, 10, 30].map((x) => [1, x, 4]);
    const [only, ...others] = nullSpace(rows);
    expect(others).toEqual([]);
    expect(only![1]).toBe(0);
    for (const row of rows)
      expect(row.reduce((sum, value, k) => sum + value * only![k]!, 0)).toBeCloseTo(0, 12);
    expect(nullSpace([...rows, [1, 0, 9]])).toEqual([]);
  });
});

describe('linear solve', () => {
  it('undoes a multiplication, and says when nothing can be told', () => {
    const a = [
      [0, 2, 1],
      [1, 0, -1],
      [3, 1, 0],
    ];
    const x = [1, -2, 0.5];
    const b = a.map((row) => row.reduce((sum, value, k) => sum + value * x[k]!, 0));
    linearSolve(a, b)!.forEach((value, k) => {
      expect(value).toBeCloseTo(x[k]!, 12);
    });
    expect(
      linearSolve(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 2],
      ),
    ).toBeNull();
  });
});

describe('textbook', () => {
  it('has the printed quantiles', () => {
    // Source: GUM table G.2 (t 97.5 % for 5 degrees: 2.57); chi-square tables (95 % for 4: 9.488).
    expect(studentShareBelow(2.570582, 5)).toBeCloseTo(0.975, 6);
    expect(chiSquareQuantile(0.95, 4)).toBeCloseTo(9.487729, 5);
  });
});

// Published fits and coverage factors. Data, values and how sure we are of each: tests/reference/uncertainty.md 4.
import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../src/num/least-squares.ts';
import { studentQuantile } from '../../src/num/textbook.ts';

describe('GUM H.3, straight line of a thermometer (from memory there, recomputed)', () => {
  // Readings t, corrections b; about t0 = 20.
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const fit = leastSquares(
    t.map((one) => [1, one - 20]),
    b,
  )!;
  const [[c11, c12], [, c22]] = fit.unscaled as [[number, number], [number, number]];

  it('has its coefficients, their uncertainties and correlation', () => {
    expect(fit.coefficients[0]).toBeCloseTo(-0.17120379013134995, 13);
    expect(fit.coefficients[1]).toBeCloseTo(0.002182697739887277, 14);
    expect(fit.residualSd).toBeCloseTo(0.0034975639635052803, 14);
    expect(fit.residualSd * Math.sqrt(c11)).toBeCloseTo(0.0028775978351599503, 13);
    expect(fit.residualSd * Math.sqrt(c22)).toBeCloseTo(0.0006679387732278308, 14);
    expect(c12 / Math.sqrt(c11 * c22)).toBeCloseTo(-0.9304296030934458, 11);
    expect(fit.dof).toBe(9);
    // Printed: -0.1712 (0.0029), 0.00218 (0.00067), r -0.930, s 0.0035.
    expect(fit.coefficients[0]!.toFixed(4)).toBe('-0.1712');
    expect(fit.coefficients[1]!.toFixed(5)).toBe('0.00218');
  });

  it('predicts the correction at 30 degrees: -0.1494 (0.0041)', () => {
    const at = 10;
    const b30 = fit.coefficients[0]! + at * fit.coefficients[1]!;
    const u30 = fit.residualSd * Math.sqrt(c11 + 2 * at * c12 + at * at * c22);
    expect(b30).toBeCloseTo(-0.1493768127324772, 12);
    expect(u30).toBeCloseTo(0.004138595752854942, 13);
  });
});

describe('GUM-5, torque through the origin (second-hand there, recomputed)', () => {
  const x = [0.101, 0.201, 0.305, 0.501, 1.001, 3.0, 4.001, 5.007];
  const y = [0.095, 0.1966, 0.3016, 0.4983, 1.0083, 3.0266, 4.0466, 5.0666];
  const s = [0.0055, 0.0052, 0.0041, 0.0041, 0.0098, 0.0082, 0.0121, 0.0379];
  const n = [6, 6, 6, 6, 6, 6, 6, 3];

  it('has the slope 1.0107, and 1.0085 when each mean counts by its own scatter', () => {
    // Each y is the mean of n readings: all 45 readings alike, then each mean by its own scatter.
    const slope = (weights: readonly number[]): number =>
      leastSquares(
        x.map((one, k) => [one * weights[k]!]),
        y.map((one, k) => one * weights[k]!),
      )!.coefficients[0]!;
    expect(slope(n.map(Math.sqrt)).toFixed(4)).toBe('1.0107');
    expect(slope(s.map((sd, k) => Math.sqrt(n[k]!) / sd)).toFixed(4)).toBe('1.0085');
  });
});

describe('NIST TN 1297 table B.1, the t factors of GUM table G.2 (read; exact values recomputed)', () => {
  // Columns 68.27, 90, 95, 95.45, 99, 99.73 %.
  const chances = [0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973];
  // One printed entry is off: 1.70 for 35 degrees and 90 %, where t is 1.6896.
  const isMisprint = (dof: number, chance: number): boolean => dof === 35 && chance === 0.9;
  const table: Readonly<Record<number, readonly string[]>> = {
    1: ['1.84', '6.31', '12.71', '13.97', '63.66', '235.8'],
    2: ['1.32', '2.92', '4.30', '4.53', '9.92', '19.21'],
    3: ['1.20', '2.35', '3.18', '3.31', '5.84', '9.22'],
    4: ['1.14', '2.13', '2.78', '2.87', '4.60', '6.62'],
    5: ['1.11', '2.02', '2.57', '2.65', '4.03', '5.51'],
    6: ['1.09', '1.94', '2.45', '2.52', '3.71', '4.90'],
    7: ['1.08', '1.89', '2.36', '2.43', '3.50', '4.53'],
    8: ['1.07', '1.86', '2.31', '2.37', '3.36', '4.28'],
    9: ['1.06', '1.83', '2.26', '2.32', '3.25', '4.09'],
    10: ['1.05', '1.81', '2.23', '2.28', '3.17', '3.96'],
    11: ['1.05', '1.80', '2.20', '2.25', '3.11', '3.85'],
    12: ['1.04', '1.78', '2.18', '2.23', '3.05', '3.76'],
    13: ['1.04', '1.77', '2.16', '2.21', '3.01', '3.69'],
    14: ['1.04', '1.76', '2.14', '2.20', '2.98', '3.64'],
    15: ['1.03', '1.75', '2.13', '2.18', '2.95', '3.59'],
    16: ['1.03', '1.75', '2.12', '2.17', '2.92', '3.54'],
    17: ['1.03', '1.74', '2.11', '2.16', '2.90', '3.51'],
    18: ['1.03', '1.73', '2.10', '2.15', '2.88', '3.48'],
    19: ['1.03', '1.73', '2.09', '2.14', '2.86', '3.45'],
    20: ['1.03', '1.72', '2.09', '2.13', '2.85', '3.42'],
    25: ['1.02', '1.71', '2.06', '2.11', '2.79', '3.33'],
    30: ['1.02', '1.70', '2.04', '2.09', '2.75', '3.27'],
    35: ['1.01', '1.70', '2.03', '2.07', '2.72', '3.23'],
    40: ['1.01', '1.68', '2.02', '2.06', '2.70', '3.20'],
    45: ['1.01', '1.68', '2.01', '2.06', '2.69', '3.18'],
    50: ['1.01', '1.68', '2.01', '2.05', '2.68', '3.16'],
    100: ['1.005', '1.660', '1.984', '2.025', '2.626', '3.077'],
  };

  it.each(Object.keys(table).map(Number))('%d degrees of freedom', (dof) => {
    chances.forEach((chance, k) => {
      const printed = table[dof]![k]!;
      const t = studentQuantile((1 + chance) / 2, dof);
      if (isMisprint(dof, chance)) {
        expect(t).toBeCloseTo(1.6896, 4);
        return;
      }
      // Half of the last digit, and a hair for what lies on the edge.
      const half = 0.5 * 10 ** -printed.split('.')[1]!.length;
      expect(Math.abs(t - Number(printed))).toBeLessThan(half * 1.01);
    });
  });
});

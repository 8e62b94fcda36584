import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GAUGES } from '../../src/job/readings/standard-gauges.ts';
import { pooled } from '../../src/measure/pooled.ts';
import { toldBy, type Measured, type SquareReading } from '../../src/measure/squareness.ts';

const exactly = (value: number, sd = 0.01): Measured => ({ value, sd, dof: Infinity });
const leanOf = (reading: SquareReading) => toldBy(reading)[0]!.estimate;
const DEG = Math.PI / 180;

describe('squareness by three lengths', () => {
  // Source: lengths published, results computed independently (geometry.md section 5).
  it.each([
    [140.4, 142.8, 99.8, -0.016950737],
    [141.6, 141.4, 99.8, 0.001413447],
    [142.4, 140.5, 99.5, 0.013433644],
    [143.55, 143.95, 101.65, -0.002782614],
    [282.8427124746, 282.8427124746, 200, 0],
  ])('%d, %d and %d give %d', (farRight, farLeft, leftSide, lean) => {
    const found = leanOf({
      by: 'three-lengths',
      farRight: exactly(farRight),
      farLeft: exactly(farLeft),
      leftSide: exactly(leftSide),
    });
    expect(found.value).toBeCloseTo(lean, 9);
    // Of a square with sides s, a diagonal counts by 1/(s root 2): two of them.
    expect(found.sd).toBeGreaterThan((0.8 * 0.01) / leftSide);
    expect(found.sd).toBeLessThan((1.6 * 0.01) / leftSide);
  });
});

describe('squareness by two diagonals', () => {
  it('finds the published skews', () => {
    // Source: synthetic 300 x 200, 0.05 deg (geometry.md section 5), recovered exactly.
    const found = leanOf({
      by: 'diagonals',
      xMm: 300,
      yMm: 200,
      farRight: exactly(360.70031846649124),
      farLeft: exactly(360.4098781362295),
    });
    expect(found.value).toBeCloseTo(Math.tan(0.05 * DEG), 12);
    // Source: US PS-1 panel rule, 8 x 4 ft and 3.175 mm on the diagonals: 1.4558 mrad.
    const [x, y] = [2438.4, 1219.2];
    const mean = Math.hypot(x, y);
    const panel = leanOf({
      by: 'diagonals',
      xMm: x,
      yMm: y,
      farRight: exactly(mean + 3.175 / 2),
      farLeft: exactly(mean - 3.175 / 2),
    });
    expect(panel.value * 1000).toBeCloseTo(1.455773, 4);
  });
});

describe('every way', () => {
  const lean = fc.double({ min: -0.01, max: 0.01, noNaN: true });

  it('finds the lean of a machine that has it, with the sign of an axis that leans right', () => {
    fc.assert(
      fc.property(lean, (gamma) => {
        const at = (u: number, v: number) => ({ x: u + gamma * v, y: v });
        const far = (a: { x: number; y: number }, b: { x: number; y: number }): Measured =>
          exactly(Math.hypot(a.x - b.x, a.y - b.y));
        const [a, b, c, d] = [at(0, 0), at(300, 0), at(300, 200), at(0, 200)];
        const side = Math.hypot(d.x - a.x, d.y - a.y);
        const diameter = (deg: number): Measured => {
          const [u, v] = [Math.cos(deg * DEG), Math.sin(deg * DEG)];
          // How far the sheared circle of radius 50 reaches along (u, v), both ways.
          return exactly(2 * 50 * Math.hypot(u, v + gamma * u));
        };
        const readings: readonly SquareReading[] = [
          { by: 'diagonals', xMm: 300, yMm: side, farRight: far(a, c), farLeft: far(b, d) },
          { by: 'three-lengths', farRight: far(a, c), farLeft: far(b, d), leftSide: far(a, d) },
          { by: 'turned-over', alongMm: 200, gap: exactly(2 * gamma * 200) },
          {
            by: 'circle',
            diameterMm: 100,
            at45: diameter(45),
            at135: diameter(135),
            x: null,
            y: null,
          },
          {
            by: 'square-and-dial',
            alongMm: 150,
            change: exactly(gamma * 150 + 0.04),
            turned: exactly(gamma * 150 - 0.04),
            squareSdMm: 0.02,
          },
        ];
        for (const reading of readings)
          expect(Math.abs(leanOf(reading).value - gamma), reading.by).toBeLessThan(
            // A circle is first order: the square of the lean is left over.
            reading.by === 'circle' ? gamma * gamma + 1e-9 : 1e-9,
          );
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  it('says how well it knows by closed forms', () => {
    const sd = 0.02 / Math.sqrt(3);
    const diagonals = leanOf({
      by: 'diagonals',
      xMm: 300,
      yMm: 300,
      farRight: exactly(424.26, sd),
      farLeft: exactly(424.26, sd),
    });
    expect(diagonals.sd).toBeCloseTo((2 * 424.26 * sd * Math.SQRT2) / (4 * 300 * 300), 9);
    const once = leanOf({
      by: 'square-and-dial',
      alongMm: 200,
      change: exactly(0.1, 0.003),
      turned: null,
      squareSdMm: 0.017,
    });
    const twice = leanOf({
      by: 'square-and-dial',
      alongMm: 200,
      change: exactly(0.1, 0.003),
      turned: exactly(0.1, 0.003),
      squareSdMm: 0.017,
    });
    expect(once.sd).toBeCloseTo(Math.hypot(0.003, 0.017) / 200, 9);
    expect(twice.sd).toBeCloseTo(0.003 / Math.SQRT2 / 200, 9);
    const [scale] = toldBy({
      by: 'length',
      along: 'x',
      commandedMm: 300,
      measured: exactly(300.12, sd),
    });
    expect(scale).toMatchObject({ what: 'scale-x' });
    expect(scale!.estimate.value).toBeCloseTo(0.12 / 300, 12);
    const circle = toldBy({
      by: 'circle',
      diameterMm: 200,
      at45: exactly(200),
      at135: exactly(200),
      x: exactly(200.1),
      y: exactly(200),
    });
    expect(circle[1]!.estimate.value).toBeCloseTo(0.1 / 200, 12);
  });
});

describe('gauges', () => {
  it('are as good as their standards say', () => {
    // Sources: DIN 862 rows read (0.02 and digital: 20 to 100, 30 for 200 to 600, 40 for 700 to 1000;
    // 0.05: 50 to 300, 60 at 400, 120 at 1000); DIN 875 at 100 mm, from memory: 3, 7, 15, 30.
    const um = (name: keyof typeof GAUGES, mm: number) => Math.round(GAUGES[name](mm) * 10000) / 10;
    expect([100, 200, 600, 700, 1000].map((mm) => um('digital caliper', mm))).toEqual([
      20, 30, 30, 40, 40,
    ]);
    expect([100, 300, 400, 500, 1000].map((mm) => um('vernier caliper', mm))).toEqual([
      50, 50, 60, 70, 120,
    ]);
    expect((['00', '0', '1', '2'] as const).map((c) => um(`square class ${c}`, 100))).toEqual([
      3, 7, 15, 30,
    ]);
  });
});

describe('several estimates', () => {
  it('are weighed by how well each is known, and disagreement is told and covered', () => {
    const both = pooled([exactly(1, 0.1), exactly(1.1, 0.2)]);
    expect(both.estimate.value).toBeCloseTo(1.02, 12);
    expect(both.estimate.sd).toBeCloseTo(1 / Math.sqrt(125), 12);
    expect(both.agreement).toBeGreaterThan(0.5);
    const apart = pooled([exactly(1, 0.1), exactly(2, 0.1)]);
    expect(apart.agreement).toBeLessThan(1e-6);
    expect(apart.estimate.sd).toBeCloseTo(0.5, 12);
    expect(pooled([exactly(3, 0.1)])).toEqual({ estimate: exactly(3, 0.1), agreement: 1 });
  });
});

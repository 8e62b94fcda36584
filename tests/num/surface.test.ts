import { describe, expect, it } from 'vitest';
import { logLikelihood, surfaceThrough } from '../../src/num/surface.ts';

const GRID = [0, 100, 200].flatMap((y) => [0, 100, 200].map((x) => ({ x, y })));
const law = { gaugeSd: 1e-6, unevenSd: 0.05, reach: 150 };

describe('a surface through readings', () => {
  it('is the plane that they lie on, anywhere, and its plane is that plane', () => {
    const on = (x: number, y: number): number => 1 + 0.002 * x - 0.001 * y;
    const surface = surfaceThrough(
      GRID.map(({ x, y }) => ({ x, y, value: on(x, y) })),
      law,
    )!;
    for (const [x, y] of [
      [37, 151],
      [-50, 260],
    ] as const)
      expect(surface.at(x, y)).toBeCloseTo(on(x, y), 9);
    expect(surface.plane.perX).toBeCloseTo(0.002, 9);
    expect(surface.plane.level).toBeCloseTo(1, 9);
  });

  it('goes through every reading of a perfect gauge, known there, and less and less away from them', () => {
    const values = [0, 0.1, -0.1, 0.2, 0, 0.05, 0, -0.2, 0.1];
    const surface = surfaceThrough(
      GRID.map((at, k) => ({ ...at, value: values[k]! })),
      law,
    )!;
    GRID.forEach(({ x, y }, k) => {
      expect(surface.at(x, y)).toBeCloseTo(values[k]!, 5);
      expect(surface.sdAt(x, y)).toBeLessThan(1e-4);
    });
    const sds = [0, 5, 20, 50].map((x) => surface.sdAt(x, 0));
    expect(sds).toEqual([...sds].sort((a, b) => a - b));
    expect(surface.sdAt(5000, 0)).toBeGreaterThan(0.05);
  });

  it('with a gauge of sd g and no unevenness is the least-squares plane, and as well known', () => {
    // Closed form: in the middle of n readings the plane is known to g / root n.
    const surface = surfaceThrough(
      GRID.map((at, k) => ({ ...at, value: k === 4 ? 0.09 : 0 })),
      { gaugeSd: 0.01, unevenSd: 1e-9, reach: 100 },
    )!;
    expect(surface.at(100, 100)).toBeCloseTo(0.01, 9);
    expect(surface.sdAt(100, 100)).toBeCloseTo(0.01 / 3, 9);
  });

  it('finds a law the likelier the nearer its size is to what is read', () => {
    const rough = GRID.map((at, k) => ({ ...at, value: k % 2 === 0 ? 0.1 : -0.1 }));
    const at = (unevenSd: number): number =>
      logLikelihood(rough, { gaugeSd: 0.005, unevenSd, reach: 50 });
    expect(at(0.1)).toBeGreaterThan(at(0.01));
    expect(at(0.1)).toBeGreaterThan(at(1));
  });

  it('is none through readings on one line', () => {
    const line = [0, 1, 2, 3].map((k) => ({ x: 10 * k, y: 5 * k, value: 0 }));
    expect(surfaceThrough(line, law)).toBeNull();
    expect(surfaceThrough(line.slice(0, 2), law)).toBeNull();
  });
});

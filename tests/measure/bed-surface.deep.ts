import { describe, expect, it } from 'vitest';
import { soundedBed } from './bed-surface-laws.ts';

const BEDS = 200;

describe('beds with bow, twist and waves, read place by place', () => {
  it.each([
    [3, 2, 0.006],
    [4, 3, 0.006],
    [5, 4, 0.02],
  ])(
    'in %d by %d rows: what is told between readings holds, and beats the plane',
    (nx, ny, gauge) => {
      const all = Array.from({ length: BEDS }, (_, k) => soundedBed(500 + k, nx, ny, gauge)).flat();
      const rms = (off: (one: (typeof all)[number]) => number): number =>
        Math.sqrt(all.reduce((sum, one) => sum + off(one) ** 2, 0) / all.length);
      const held = all.filter(({ isHeld }) => isHeld).length / all.length;
      // Smooth beds are told too carefully (the law allows rough ones), never too boldly; four standard errors.
      expect(held).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / BEDS));
      expect(rms(({ offSurface }) => offSurface)).toBeLessThan(
        0.75 * rms(({ offPlane }) => offPlane),
      );
    },
  );
});

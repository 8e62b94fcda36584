import { describe, expect, it } from 'vitest';
import { coverageOf } from './coverage-laws.ts';

describe('on random jobs', () => {
  it('the 95 % interval holds 95 % of fresh parts, and 99 % of certified digits are right (300 jobs)', () => {
    const { held, heldSe, certified, wrong, fastCertified, fastWrong } = coverageOf(
      300,
      20_480,
      102_400,
    );
    expect(Math.abs(held - 0.95)).toBeLessThan(4 * heldSe);
    expect(heldSe).toBeLessThan(0.001);
    expect(certified).toBeGreaterThan(1200);
    expect(wrong / certified).toBeLessThan(0.01);
    expect(fastCertified).toBeGreaterThan(600);
    expect(fastWrong / fastCertified).toBeLessThan(0.01);
  });
});

import { describe, expect, it } from 'vitest';
import { coverageOf } from './coverage-laws.ts';

describe('on random jobs', () => {
  it('the 95 % interval holds 95 % of fresh parts, and certified digits are right (4 jobs)', () => {
    const { held, heldSe, certified, wrong, fastCertified, fastWrong } = coverageOf(
      4,
      10_240,
      20_480,
    );
    expect(Math.abs(held - 0.95)).toBeLessThan(4 * heldSe);
    expect(heldSe).toBeLessThan(0.008);
    expect(certified).toBeGreaterThan(10);
    expect(fastCertified).toBeGreaterThan(10);
    expect([wrong, fastWrong]).toEqual([0, 0]);
  });
});

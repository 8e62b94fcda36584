import { describe, expect, it } from 'vitest';
import { giveMm } from '../../src/job/check/thin-web.ts';

describe('a web under the cutter', () => {
  it('gives as a plate held all round and pushed in its middle', () => {
    // w = F a^2 / (16 pi D) and D = E t^3 / (12 (1 - nu^2)): Timoshenko and Woinowsky-Krieger, value from memory. For
    // E 3000, t 3, nu 0.3: D = 7417.6 N mm; F 20, a 29: w = 20 * 841 / (50.265 * 7417.6) = 0.0451.
    expect(giveMm(3, 29)).toBeCloseTo(0.0451, 4);
  });

  it('gives eight times as much at half the thickness, four times over twice the width', () => {
    expect(giveMm(1.5, 29) / giveMm(3, 29)).toBeCloseTo(8, 9);
    expect(giveMm(3, 58) / giveMm(3, 29)).toBeCloseTo(4, 9);
  });
});

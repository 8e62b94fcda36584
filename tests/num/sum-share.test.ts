import { describe, expect, it } from 'vitest';
import { hermiteAt } from '../../src/num/hermite-table.ts';
import { shareOfSum, type Term } from '../../src/num/sum-share.ts';
import { normalShareBelow } from '../../src/num/textbook.ts';

const R3 = Math.sqrt(3);
const rectangle = (size: number): Term => ({ kind: 'rectangular', size });

describe('the share of a sum below a value', () => {
  it('is the textbook’s for one normal and for several', () => {
    const table = shareOfSum([
      { kind: 'normal', size: 0.3 },
      { kind: 'normal', size: 0.4 },
    ]);
    for (let z = -7.9; z < 8; z += 0.0713) {
      expect(Math.abs(hermiteAt(table, 0.5 * z) - normalShareBelow(z))).toBeLessThan(1e-7);
    }
  });

  it('has 97.5 % where JCGM 101, 9.2.3 and 9.2.4 have it', () => {
    // Exact half-widths of four equal rectangles, and of three and one ten times as wide (tests/reference 1.1).
    const four = shareOfSum([1, 1, 1, 1].map((k) => rectangle(k * R3)));
    expect(Math.abs(hermiteAt(four, 3.879407) - 0.975)).toBeLessThan(1e-6);
    const unequal = shareOfSum([1, 1, 1, 10].map((k) => rectangle(k * R3)));
    // Its density has corners: 256 waves leave 1e-5.
    expect(Math.abs(hermiteAt(unequal, 17.015814) - 0.975)).toBeLessThan(2e-5);
  });

  it('of two equal rectangles is a triangle’s', () => {
    const [two, triangle] = [
      shareOfSum([rectangle(0.5), rectangle(0.5)]),
      shareOfSum([{ kind: 'triangular', size: 1 }]),
    ];
    for (const x of [-0.9, -0.5, -0.1, 0, 0.3, 0.8]) {
      const exact = x < 0 ? (1 + x) ** 2 / 2 : 1 - (1 - x) ** 2 / 2;
      // 256 waves of a density with corners: 1e-5.
      expect(Math.abs(hermiteAt(two, x) - exact)).toBeLessThan(2e-5);
      expect(Math.abs(hermiteAt(triangle, x) - exact)).toBeLessThan(2e-5);
    }
  });
});

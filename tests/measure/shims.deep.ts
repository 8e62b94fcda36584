import { describe, expect, it } from 'vitest';
import { EARNS_MM } from '../../src/measure/shim-search.ts';
import { shimLaws } from './shim-laws.ts';

const over = (count: number, from: number, screws: 3 | 4 | 5): readonly number[] =>
  Array.from({ length: count }, (_, k) => shimLaws(from + k, screws));

describe('shim plans over many beds', () => {
  it('are the best there are where every choice can be tried', () => {
    for (const dearer of [...over(60, 1000, 3), ...over(12, 2000, 4)])
      expect(Math.abs(dearer)).toBeLessThan(1e-9);
  });

  it('are found by moves where there are more, seldom dearer than the best by what two pieces earn', () => {
    // Five screws and ten stacks: more than are tried one by one.
    const dearer = over(8, 3000, 5).filter((mm) => mm > 2 * EARNS_MM);
    expect(dearer.length).toBeLessThanOrEqual(1);
    expect(Math.max(0, ...dearer)).toBeLessThan(0.05);
  });
});

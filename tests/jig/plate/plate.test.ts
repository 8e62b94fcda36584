import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundedBox } from '../../../src/jig/plate/curve.ts';
import { strokesOf, wordsLongMm } from '../../../src/jig/plate/lettering.ts';
import { drawnIn, plateFacets } from '../../../src/jig/plate/plate-solid.ts';
import { expectLawfulPlate } from './laws.ts';
import { somePlates } from './some-plates.ts';

describe('a plate with holes, pockets and words', () => {
  it('is closed, of the volume of its outlines, and lets its pins through', async () => {
    await fc.assert(
      fc.asyncProperty(somePlates, async (plate) => {
        await expectLawfulPlate(plate);
      }),
      { seed: 51, numRuns: 8 },
    );
  });

  it('has words that stay as long as they are said to be', () => {
    const places = strokesOf({ words: 'W8>', at: { x: 3, y: 2 }, heightMm: 12 }).flat();
    expect(Math.min(...places.map((p) => p.x))).toBe(3);
    expect(Math.max(...places.map((p) => p.x))).toBeCloseTo(3 + wordsLongMm('W8>', 12), 9);
    expect(Math.max(...places.map((p) => p.y))).toBeCloseTo(14, 9);
  });

  it('is refused as a bug when its foot cannot be drawn in', () => {
    const thin = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 1 },
      { x: 0, y: 1 },
    ];
    expect(() => drawnIn(thin, 0.6)).toThrow('an outline too fine to draw in by 0.6');
  });

  it('is refused as a bug when a hole ends under its bottom', () => {
    expect(() =>
      plateFacets({
        name: 'plate',
        thickMm: 5,
        outline: roundedBox({ x: 0, y: 0 }, { x: 30, y: 30 }, 3),
        holes: [{ ends: [{ x: 15, y: 15 }], radiusMm: 3, depthMm: 6, seat: null }],
        words: [],
      }),
    ).toThrow('a hole from 5 to -1');
  });
});

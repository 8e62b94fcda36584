import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gapInRound } from '../../src/plane/round-gap.ts';
import { newLanded, reach, type Landed } from '../../src/plane/support.ts';

const near = (span: number): fc.Arbitrary<number> =>
  fc.double({ min: -span, max: span, noNaN: true });

function polygon(
  places: readonly (readonly [number, number])[],
  discMm: number,
  roundMm: number,
): Landed {
  const landed = newLanded(places.length);
  places.forEach(([x, y], k) => {
    landed.x[k] = x;
    landed.y[k] = y;
  });
  landed.discMm = discMm;
  landed.roundMm = roundMm;
  return landed;
}

describe('the gap from a pocket to the round recess about it', () => {
  it('is the radius less the corner: 3, 4, 5', () => {
    const square = polygon(
      [
        [-3, -4],
        [3, -4],
        [3, 4],
        [-3, 4],
      ],
      0,
      1,
    );
    expect(gapInRound(polygon([[0, 0]], 8, 2), square)).toBeCloseTo(10 - 5 - 1, 12);
  });

  it('agrees with looking in every direction, with leaning axes and the pocket off the middle', () => {
    fc.assert(
      fc.property(
        fc.tuple(near(1), near(1)),
        fc.array(near(2e-3), { minLength: 4, maxLength: 4 }),
        ([x, y], map) => {
          const outer = polygon([[x, y]], 57, 3);
          const inner = polygon(
            [
              [-26, -27],
              [25, -26],
              [26, 26],
              [-27, 25],
            ],
            0.2,
            3,
          );
          outer.map.set(map);
          inner.map.set(map.map((value) => value / 2));
          let least = Infinity;
          for (let k = 0; k < 40_000; k++) {
            const [ux, uy] = [Math.cos((k * Math.PI) / 20_000), Math.sin((k * Math.PI) / 20_000)];
            least = Math.min(least, reach(outer, ux, uy) - reach(inner, ux, uy));
          }
          // Directions are 1.6e-4 apart: the dip is missed by at most 60 (8e-5)^2 / 2.
          const short = gapInRound(outer, inner)!;
          expect(Math.abs(short - least)).toBeLessThan(4e-7);
        },
      ),
      { seed: 6, numRuns: 20 },
    );
  });

  it('does not answer where it cannot see: no round outline, or a corner at its centre', () => {
    const square = polygon(
      [
        [-3, -4],
        [3, -4],
        [3, 4],
        [-3, 4],
      ],
      0,
      1,
    );
    expect(gapInRound(square, square)).toBe(null);
    expect(gapInRound(polygon([[3, 4]], 8, 2), square)).toBe(null);
  });
});

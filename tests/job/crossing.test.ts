import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingOf } from '../../src/job/drawing/crossing.ts';
import { faultsOf } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

type Corners = readonly (readonly [number, number])[];
const crosses = (corners: Corners): boolean =>
  crossingOf(corners.map(([x, y]) => ({ x, y }))) !== null;

const SOUND: readonly (readonly [string, Corners])[] = [
  [
    'a triangle',
    [
      [0, 0],
      [30, 0],
      [0, 20],
    ],
  ],
  [
    'a corner that is none, on a straight side',
    [
      [0, 0],
      [10, 0],
      [30, 0],
      [0, 20],
    ],
  ],
  [
    'two sides on one line, apart',
    [
      [0, 0],
      [10, 0],
      [10, 5],
      [20, 5],
      [20, 0],
      [30, 0],
      [30, 20],
      [0, 20],
    ],
  ],
];
const CROSSED: readonly (readonly [string, Corners])[] = [
  [
    'a bow tie',
    [
      [0, 0],
      [30, 20],
      [30, 0],
      [0, 20],
    ],
  ],
  [
    'a corner on another side',
    [
      [0, 0],
      [30, 0],
      [30, 20],
      [15, 0],
      [0, 20],
    ],
  ],
  [
    'two sides on one line, one over the other',
    [
      [0, 0],
      [20, 0],
      [20, 5],
      [30, 5],
      [30, 0],
      [10, 0],
      [10, 20],
      [0, 20],
    ],
  ],
  [
    'a side that runs back over the one before',
    [
      [0, 0],
      [30, 0],
      [20, 0],
      [20, 20],
    ],
  ],
  [
    'the last side over the first',
    [
      [10, 0],
      [30, 0],
      [30, 20],
      [0, 20],
      [0, 0],
      [20, 0],
    ],
  ],
];

describe('an outline', () => {
  it.each(SOUND)('with %s is sound, whichever corner is written first', (_what, corners) => {
    for (let k = 0; k < corners.length; k++)
      expect(crosses([...corners.slice(k), ...corners.slice(0, k)])).toBe(false);
  });

  it.each(CROSSED)(
    'with %s crosses itself, whichever corner is written first',
    (_what, corners) => {
      for (let k = 0; k < corners.length; k++)
        expect(crosses([...corners.slice(k), ...corners.slice(0, k)])).toBe(true);
    },
  );

  it('crosses itself or not whichever way round, mirrored or moved', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }));
    const distinct = fc.uniqueArray(corner, { minLength: 3, maxLength: 7, selector: String });
    fc.assert(
      fc.property(distinct, (corners) => {
        const is = crosses(corners);
        expect(crosses(corners.toReversed())).toBe(is);
        expect(crosses(corners.map(([x, y]) => [y, x]))).toBe(is);
        expect(crosses(corners.map(([x, y]) => [x + 64, y - 32]))).toBe(is);
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  it('that is written as a polygon and runs back over itself is refused', () => {
    const words =
      'polygon: [[0, 0], [30, 0], [20, 0], [20, 20]], at: [100, 60], depth: 6, cutter: flat 6';
    const job = otherwise(JOB, 'circle: 80, at: [100, 60], depth: 6, cutter: flat 6', words);
    expect(faultsOf(job, SHOP).join()).toContain('dish crosses itself');
  });
});

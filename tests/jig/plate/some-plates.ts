import fc from 'fast-check';
import { roundedBox } from '../../../src/jig/plate/curve.ts';
import type { Plate, PlateHole } from '../../../src/jig/plate/plate.ts';
import { evenly } from '../../plane/evenly.ts';

const CELL_MM = 26;

/** Plates with holes of all kinds, one in each cell of a grid, and words along the lower edge. */
export const somePlates: fc.Arbitrary<Plate> = fc
  .record({
    columns: fc.integer({ min: 1, max: 5 }),
    rows: fc.integer({ min: 1, max: 4 }),
    thickMm: evenly(5, 24),
    cornerMm: evenly(2, 12),
    words: fc.constantFrom('', 'FACE UP', 'B8-Q 0.5', 'LID >'),
    kinds: fc.array(
      fc.record({
        kind: fc.constantFrom('round', 'slot', 'blind', 'seat', 'nut', 'none'),
        size: evenly(0, 1),
        deep: evenly(0.1, 0.9),
      }),
      { minLength: 20, maxLength: 20 },
    ),
  })
  .map(({ columns, rows, thickMm, cornerMm, words, kinds }) => ({
    name: 'plate',
    thickMm,
    outline: roundedBox(
      { x: -20, y: -20 },
      { x: Math.max(60, columns * CELL_MM), y: rows * CELL_MM },
      cornerMm,
    ),
    holes: Array.from({ length: columns * rows }, (_, i) => i).flatMap((i): PlateHole[] => {
      const { kind, size, deep } = kinds[i]!;
      const at = { x: (i % columns) * CELL_MM, y: Math.floor(i / columns) * CELL_MM };
      const radiusMm = 1.5 + 3 * size;
      const round = { ends: [at] as const, radiusMm, depthMm: null, seat: null };
      switch (kind) {
        case 'round':
          return [round];
        case 'slot':
          return [{ ...round, ends: [at, { x: at.x + 6, y: at.y + 4 * size }] }];
        case 'blind':
          return [{ ...round, depthMm: thickMm * deep }];
        case 'seat':
          return [
            {
              ...round,
              seat: { shape: { kind: 'round', radiusMm: radiusMm + 2 }, depthMm: thickMm * deep },
            },
          ];
        case 'nut':
          return [
            {
              ...round,
              seat: {
                shape: { kind: 'hexagon', acrossFlatsMm: 2 * radiusMm + 3 },
                depthMm: thickMm * deep,
              },
            },
          ];
        case 'none':
          return [];
      }
    }),
    words: [{ words, at: { x: -12, y: -16 }, heightMm: 6, strokeMm: 0.8, depthMm: 0.4 }],
  }));

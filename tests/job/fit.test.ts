// Source of every table here: tests/reference/geometry.md section 1 (ISO 286).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitOf } from '../../src/job/fit/fit.ts';

const um = (mm: number): number => Math.round(mm * 1e6) / 1e3;

/** Lower and upper deviation, micrometres, of one half of a fit; the other half is sound at every diameter. */
function limits(half: string, diameterMm: number): readonly [number, number] {
  const isHole = half === half.toUpperCase();
  const read = fitOf(isHole ? `${half}/h6` : `H7/${half}`, diameterMm);
  if (!read.ok) throw new Error(read.faults[0]!.message);
  const { lowMm, highMm } = isHole ? read.value.hole : read.value.pin;
  return [um(lowMm), um(highMm)];
}

function clearance(fit: string, diameterMm: number): readonly [number, number] {
  const read = fitOf(fit, diameterMm);
  if (!read.ok) throw new Error(read.faults[0]!.message);
  return [um(read.value.clearance.lowMm), um(read.value.clearance.highMm)];
}

const faultsOf = (fit: string, diameterMm: number): readonly string[] => {
  const read = fitOf(fit, diameterMm);
  return read.ok ? [] : read.faults.map(({ message, instead }) => `${message}; ${instead}`);
};

/** A diameter inside each range, and the one that ends it. */
const RANGES: readonly (readonly number[])[] = [
  [0.5, 2, 3],
  [3.0001, 4, 5, 6],
  [6.0001, 6.35, 8, 10],
  [10.0001, 12, 12.7, 16, 18],
  [18.0001, 20, 25, 30],
  [30.0001, 40, 50],
];
const figures = (row: string): readonly number[] => row.split(' ').map(Number);

describe('the width of a tolerance', () => {
  // Printed for the ranges up to 3, 6, 10, 18, 30 and 50 mm.
  it.each([
    [5, '4 5 6 8 9 11'],
    [6, '6 8 9 11 13 16'],
    [7, '10 12 15 18 21 25'],
    [8, '14 18 22 27 33 39'],
    [9, '25 30 36 43 52 62'],
    [10, '40 48 58 70 84 100'],
    [11, '60 75 90 110 130 160'],
    [12, '100 120 150 180 210 250'],
  ])('of grade %d is %s micrometres', (grade, row) => {
    figures(row).forEach((width, range) => {
      for (const diameterMm of RANGES[range]!)
        expect(limits(`H${grade}`, diameterMm)).toEqual([0, width]);
    });
  });

  it('follows the formula of the standard within its roundings', () => {
    // i = 0.45 D^(1/3) + 0.001 D, D the geometric mean of the range; k i for each grade. The reference counts 38
    // of 48 within 3 % or 0.6 micrometres; it takes 1 mm as the low end of the first range.
    const factors = [7, 10, 16, 25, 40, 64, 100, 160];
    const ends = [1, 3, 6, 10, 18, 30, 50];
    let near = 0;
    for (let range = 0; range < 6; range++) {
      const mean = Math.sqrt(ends[range]! * ends[range + 1]!);
      const unit = 0.45 * Math.cbrt(mean) + 0.001 * mean;
      factors.forEach((factor, index) => {
        const [, width] = limits(`H${5 + index}`, ends[range + 1]!);
        const off = Math.abs(width - factor * unit);
        if (off <= 0.6 || off <= 0.03 * factor * unit) near++;
      });
    }
    expect(near).toBe(38);
  });
});

describe('where a letter puts its tolerance', () => {
  it.each([
    ['f7', '-6 -10 -13 -16 -20 -25', 'upper'],
    ['g6', '-2 -4 -5 -6 -7 -9', 'upper'],
    ['h6', '0 0 0 0 0 0', 'upper'],
    ['k6', '0 1 1 1 2 2', 'lower'],
    ['m6', '2 4 6 7 8 9', 'lower'],
    ['n6', '4 8 10 12 15 17', 'lower'],
    ['p6', '6 12 15 18 22 26', 'lower'],
    ['F7', '6 10 13 16 20 25', 'lower'],
    ['G7', '2 4 5 6 7 9', 'lower'],
    ['H7', '0 0 0 0 0 0', 'lower'],
    // With the steps from IT6 to IT7: 0 (up to 3 mm), 4, 6, 7, 8, 9.
    ['N7', '-4 -4 -4 -5 -7 -8', 'upper'],
    ['P7', '-6 -8 -9 -11 -14 -17', 'upper'],
    // From IT7 to IT8: 6, 7, 9, 12, 14; and from IT5 to IT6: 3, 3, 3, 4, 5.
    ['N8', '-4 -2 -3 -3 -3 -3', 'upper'],
    ['N6', '-4 -5 -7 -9 -11 -12', 'upper'],
    ['P6', '-6 -9 -12 -15 -18 -21', 'upper'],
  ] as const)('%s: %s micrometres, its %s limit', (half, row, which) => {
    figures(row).forEach((deviation, range) => {
      for (const diameterMm of RANGES[range]!)
        expect(limits(half, diameterMm)[which === 'lower' ? 0 : 1]).toBe(deviation);
    });
  });
});

const LIMITS = `
| nom | g6 | h6 | h7 | h9 | k6 | m6 | p6 | F7 | G7 | H6 | H7 | H8 | N7 | P7 |
| 3 | -2/-8 | 0/-6 | 0/-10 | 0/-25 | 6/0 | 8/2 | 12/6 | 16/6 | 12/2 | 6/0 | 10/0 | 14/0 | -4/-14 | -6/-16 |
| 4,5,6 | -4/-12 | 0/-8 | 0/-12 | 0/-30 | 9/1 | 12/4 | 20/12 | 22/10 | 16/4 | 8/0 | 12/0 | 18/0 | -4/-16 | -8/-20 |
| 6.35,8,10 | -5/-14 | 0/-9 | 0/-15 | 0/-36 | 10/1 | 15/6 | 24/15 | 28/13 | 20/5 | 9/0 | 15/0 | 22/0 | -4/-19 | -9/-24 |
| 12,12.7,16 | -6/-17 | 0/-11 | 0/-18 | 0/-43 | 12/1 | 18/7 | 29/18 | 34/16 | 24/6 | 11/0 | 18/0 | 27/0 | -5/-23 | -11/-29 |
| 20 | -7/-20 | 0/-13 | 0/-21 | 0/-52 | 15/2 | 21/8 | 35/22 | 41/20 | 28/7 | 13/0 | 21/0 | 33/0 | -7/-28 | -14/-35 |`;

/** The fits at the diameters of the reference's data file; those of one range are the same. */
const FITS = `
| nom | H7/g6 | H7/h6 | H7/k6 | H7/m6 | H7/n6 | H7/p6 | H8/h9 | H8/f7 | F7/h6 | G7/h6 | N7/h6 | P7/h6 | F7/m6 | G7/m6 | H8/m6 | F8/m6 |
| 3 | 2..18 | 0..16 | -6..10 | -8..8 | -10..6 | -12..4 | 0..39 | 6..30 | 6..22 | 2..18 | -14..2 | -16..0 | -2..14 | -6..10 | -8..12 | -2..18 |
| 4,5,6 | 4..24 | 0..20 | -9..11 | -12..8 | -16..4 | -20..0 | 0..48 | 10..40 | 10..30 | 4..24 | -16..4 | -20..0 | -2..18 | -8..12 | -12..14 | -2..24 |
| 6.35,8,10 | 5..29 | 0..24 | -10..14 | -15..9 | -19..5 | -24..0 | 0..58 | 13..50 | 13..37 | 5..29 | -19..5 | -24..0 | -2..22 | -10..14 | -15..16 | -2..29 |
| 12,12.7,16 | 6..35 | 0..29 | -12..17 | -18..11 | -23..6 | -29..0 | 0..70 | 16..61 | 16..45 | 6..35 | -23..6 | -29..0 | -2..27 | -12..17 | -18..20 | -2..36 |
| 20 | 7..41 | 0..34 | -15..19 | -21..13 | -28..6 | -35..-1 | 0..85 | 20..74 | 20..54 | 7..41 | -28..6 | -35..-1 | -1..33 | -14..20 | -21..25 | -1..45 |`;

/** A printed table as (diameter, column, cell). */
function cellsOf(table: string): readonly (readonly [number, string, string])[] {
  const rows = table
    .trim()
    .split('\n')
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
  const [head = [], ...body] = rows;
  return body.flatMap(([nominals = '', ...cells]) =>
    nominals
      .split(',')
      .flatMap((nominal) =>
        cells.map((cell, index) => [Number(nominal), head[index + 1]!, cell] as const),
      ),
  );
}

describe('the printed tables', () => {
  it('of limits, 11 diameters of 14 columns', () => {
    const cells = cellsOf(LIMITS);
    expect(cells).toHaveLength(11 * 14);
    for (const [nominal, half, cell] of cells) {
      const [upper, lower] = cell.split('/').map(Number);
      expect([nominal, half, ...limits(half, nominal)]).toEqual([nominal, half, lower, upper]);
    }
  });

  it('of fits, 11 diameters of 16 columns', () => {
    const cells = cellsOf(FITS);
    expect(cells).toHaveLength(11 * 16);
    for (const [nominal, fit, cell] of cells)
      expect([nominal, fit, ...clearance(fit, nominal)]).toEqual([
        nominal,
        fit,
        ...cell.split('..').map(Number),
      ]);
  });

  it('of worked examples: 20 H7/g6, 50 H8/f7, P7 from 18 to 30 mm', () => {
    expect(clearance('H7/g6', 20)).toEqual([7, 41]);
    expect(limits('H8', 50)).toEqual([0, 39]);
    expect(limits('f7', 50)).toEqual([-50, -25]);
    expect(clearance('H8/f7', 50)).toEqual([25, 89]);
    expect(limits('P7', 25)[1]).toBe(-14);
  });
});

describe('any fit', () => {
  const hole = fc.constantFrom('F', 'G', 'H');
  const grade = fc.integer({ min: 5, max: 12 });
  const diameter = fc.double({ min: 0.1, max: 50, noNaN: true });

  it('has a clearance that spreads as far as both tolerances together', () => {
    const pin = fc.constantFrom('f', 'g', 'h', 'm', 'n', 'p');
    fc.assert(
      fc.property(hole, grade, pin, grade, diameter, (letter, a, small, b, diameterMm) => {
        const [low, high] = clearance(`${letter}${a}/${small}${b}`, diameterMm);
        const [, holeWidth] = limits(`H${a}`, diameterMm);
        const [pinWidth] = limits(`h${b}`, diameterMm);
        expect(high - low).toBeCloseTo(holeWidth - pinWidth, 9);
      }),
      { seed: 1, numRuns: 50 },
    );
  });

  it('that is loose is no tighter in a larger diameter', () => {
    const pin = fc.constantFrom('f', 'g', 'h');
    fc.assert(
      fc.property(
        hole,
        grade,
        pin,
        grade,
        diameter,
        diameter,
        (letter, a, small, b, one, other) => {
          const text = `${letter}${a}/${small}${b}`;
          const [low, high] = clearance(text, Math.min(one, other));
          const [largerLow, largerHigh] = clearance(text, Math.max(one, other));
          expect(low).toBeGreaterThanOrEqual(0);
          expect(largerLow).toBeGreaterThanOrEqual(low);
          expect(largerHigh).toBeGreaterThanOrEqual(high);
        },
      ),
      { seed: 1, numRuns: 50 },
    );
  });
});

describe('a fit that cannot be read', () => {
  it.each([
    ['H7 / g6', 'H7 / g6 has a space in it; write H7/g6'],
    ['H7 g6', 'H7 g6 has a space in it; write H7/g6'],
    ['g6/H7', 'g6/H7 has the pin before the hole, which goes by a capital letter; write H7/g6'],
    [
      'H7/G6',
      'H7/G6 names two holes; write the hole in capitals and the pin in small letters: H7/g6',
    ],
    [
      'h7/g6',
      'h7/g6 names two pins; write the hole in capitals and the pin in small letters: H7/g6',
    ],
    ['E7/g6', 'E7/g6 has the hole E, which is not in the table; write one of F, G, H, N, P'],
    ['JS7/g6', 'JS7/g6 has the hole JS, which is not in the table; write one of F, G, H, N, P'],
    ['H7/s6', 'H7/s6 has the pin s, which is not in the table; write one of f, g, h, k, m, n, p'],
    ['H13/g6', 'H13/g6 has the hole H13, and H is tabled for grades 5 to 12; write H5 to H12'],
    ['H7/g4', 'H7/g4 has the pin g4, and g is tabled for grades 5 to 12; write g5 to g12'],
    ['H7/k8', 'H7/k8 has the pin k8, and k is tabled for grades 5 to 7; write k5 to k7'],
    ['N9/h6', 'N9/h6 has the hole N9, and N is tabled for grades 6 to 8; write N6 to N8'],
    ['P8/h6', 'P8/h6 has the hole P8, and P is tabled for grades 6 to 7; write P6 to P7'],
    ['Hh7/g6', 'Hh7/g6 is not a fit; write the hole, a stroke and the pin, such as H7/g6'],
    ['H7', 'H7 is not a fit; write the hole, a stroke and the pin, such as H7/g6'],
    ['H7/', 'H7/ is not a fit; write the hole, a stroke and the pin, such as H7/g6'],
    ['', 'nothing is not a fit; write the hole, a stroke and the pin, such as H7/g6'],
    ['7H/6g', '7H/6g is not a fit; write the hole, a stroke and the pin, such as H7/g6'],
    ['H7/g6/h6', 'H7/g6/h6 is not a fit; write the hole, a stroke and the pin, such as H7/g6'],
    ['H-7/g6', 'H-7/g6 is not a fit; write the hole, a stroke and the pin, such as H7/g6'],
    ['H7.5/g6', 'H7.5/g6 is not a fit; write the hole, a stroke and the pin, such as H7/g6'],
  ])('%j', (text, fault) => {
    expect(faultsOf(text, 8)).toEqual([fault]);
  });

  it('names all that is wrong at once', () => {
    expect(faultsOf('H99/s6', 8)).toEqual([
      'H99/s6 has the hole H99, and H is tabled for grades 5 to 12; write H5 to H12',
      'H99/s6 has the pin s, which is not in the table; write one of f, g, h, k, m, n, p',
    ]);
    expect(faultsOf('constructor7/toString6', 8)).not.toEqual([]);
  });

  it.each([0, -8, 50.001, Infinity, NaN])('at a diameter of %d mm', (diameterMm) => {
    expect(faultsOf('H7/g6', diameterMm)).toEqual([
      `H7/g6 is not tabled for a diameter of ${diameterMm} mm; write a diameter above 0 and up to 50 mm, or the clearance itself such as 0..0.1`,
    ]);
  });

  it('is no exception, whatever is written', () => {
    fc.assert(
      fc.property(fc.string(), fc.double(), (text, diameterMm) => {
        const read = fitOf(text, diameterMm);
        for (const { message, instead } of read.ok ? [] : read.faults)
          expect([message, instead].every((words) => words.length > 0)).toBe(true);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

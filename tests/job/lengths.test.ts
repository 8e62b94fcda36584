import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLength } from '../../src/job/text/length.ts';

const mmOf = (text: string): number => {
  const read = readLength(text);
  if (!read.ok) throw new Error(read.faults[0]!.message);
  return read.value.value;
};
const faultOf = (text: string): string => {
  const read = readLength(text);
  return read.ok ? 'none' : `${read.faults[0]!.message}; ${read.faults[0]!.instead}`;
};

describe('a length', () => {
  // The inch is 25.4 mm exactly; the decimals below are multiples of 25.4 by hand.
  it.each([
    ['12', 12],
    ['.5', 0.5],
    ['6.35 mm', 6.35],
    ['1/4 in', 6.35],
    ['1/4in', 6.35],
    ['3/8"', 9.525],
    ['3/8 "', 9.525],
    ['1 1/2 in', 38.1],
    ['1-1/2 in', 38.1],
    ['1 1/2"', 38.1],
    ['-1-1/2 in', -38.1],
    ['0.25 inch', 6.35],
    ['2 inches', 50.8],
    ['1/64 in', 0.396875],
    ['25 thou', 0.635],
    ['5 µm', 0.005],
    ['5 μm', 0.005],
    ['5 um', 0.005],
    ['1.2 cm', 12],
    ['1e-3 m', 1],
    ['1/2', 0.5],
  ])('reads %s as %d mm, to the last bit', (text, mm) => {
    expect(mmOf(text)).toBe(mm);
  });

  it.each([
    ['1,5', '1,5 has a comma; write 1.5'],
    ['1,5 mm', '1,5 mm has a comma; write 1.5 mm'],
    ['6 feet', '6 feet has the unit feet, which is not known; write mm, cm, m, µm, in, " or thou'],
    ['6 MM', '6 MM has the unit MM, which is not known; write mm, cm, m, µm, in, " or thou'],
    ['', 'nothing is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"'],
    ['mm', 'mm is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"'],
    ['NaN', 'NaN is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"'],
    ['Infinity', 'Infinity is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"'],
    ['1/0 in', '1/0 in is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"'],
    ['1e999', '1e999 is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"'],
    ['0x10', '0x10 is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"'],
    ['1 2/', '1 2/ is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"'],
    [
      '12 constructor',
      '12 constructor has the unit constructor, which is not known; write mm, cm, m, µm, in, " or thou',
    ],
    ['1e9', '1e9 is longer than anything here can be; write at most 10000 mm'],
    ['-1000 in', '-1000 in is longer than anything here can be; write at most 10000 mm'],
  ])('refuses %s', (text, fault) => {
    expect(faultOf(text)).toBe(fault);
  });

  it('comes back as it was written, in mm and in 64ths of an inch', () => {
    fc.assert(
      fc.property(fc.double({ min: -9999, max: 9999, noNaN: true }), (mm) => {
        expect(mmOf(String(mm))).toBe(mm + 0);
        expect(mmOf(`${mm} mm`)).toBe(mm + 0);
      }),
      { seed: 1 },
    );
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 1, max: 63 }),
        (whole, part) => {
          // 25.4 / 64 = 127 / 320, so this is the exact value rounded once.
          expect(mmOf(`${whole} ${part}/64 in`)).toBe(((whole * 64 + part) * 127) / 320);
        },
      ),
      { seed: 1 },
    );
  });

  it('is a value or a fault for any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const read = readLength(text);
        if (read.ok) expect(Math.abs(read.value.value)).toBeLessThanOrEqual(10_000);
        else expect(read.faults[0]!.message).not.toBe('');
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAngle } from '../../src/job/text/angle.ts';
import { LENGTH } from '../../src/job/text/length.ts';
import type { Quantity } from '../../src/job/text/quantity.ts';
import { readChance, STRAIN } from '../../src/job/text/share.ts';
import { readSized } from '../../src/job/text/sized.ts';
import { readSlope, SLOPE } from '../../src/job/text/slope.ts';
import { readSpread } from '../../src/job/text/spread.ts';

const spreadOf = (quantity: Quantity, text: string) => {
  const read = readSpread(quantity, text);
  return read.ok
    ? read.value.distribution
    : `${read.faults[0]!.message}; ${read.faults[0]!.instead}`;
};

describe('a slope', () => {
  it.each([
    ['0.3 per 200', 0.0015],
    ['-0.1 per 100', -0.001],
    ['1/64 in per 8 in', 1 / 512],
    ['0', 0],
  ])('reads %s as a tangent', (text, tangent) => {
    const read = readSlope(text);
    expect(read.ok && read.value.value).toBe(tangent);
  });

  it('reads degrees as their tangent', () => {
    const read = readSlope('45 deg');
    // tan 45 deg = 1, to an ulp of pi/4.
    expect(read.ok && read.value.value).toBeCloseTo(1, 15);
  });

  it.each([
    ['0.3', '0.3 does not say over which length it leans; write 0.3 per 200, or 0.3 deg'],
    ['0.3 per 0', '0.3 per 0 leans over a length of 0; write a length above 0 after per'],
    [
      '0.3 per 8 in',
      '0.3 per 8 in has a unit on one side only; write both units, as in 1/64 in per 8 in, or none for mm',
    ],
    [
      'steep',
      'steep is not a slope; write a slope such as 0.3 per 200, or an angle such as 0.4 deg',
    ],
    [
      '90 deg',
      '90 deg is not a slope; write a slope such as 0.3 per 200, or an angle such as 0.4 deg',
    ],
  ])('refuses %s', (text, fault) => {
    const read = readSlope(text);
    expect(read.ok ? '' : `${read.faults[0]!.message}; ${read.faults[0]!.instead}`).toBe(fault);
  });
});

describe('an angle and a chance', () => {
  it('are read in degrees and in percent', () => {
    const angle = readAngle('-90 deg');
    expect(angle.ok && angle.value.value).toBe(-Math.PI / 2);
    const chance = readChance('99.5 %');
    expect(chance.ok && chance.value.value).toBe(0.995);
    expect(readAngle('400 deg').ok).toBe(false);
    expect(readChance('101 %').ok).toBe(false);
  });
});

describe('a spread', () => {
  // ±a alone is rectangular (GUM 4.3.7); ±a 95 % is normal with a / 1.95996 (standard normal 97.5 % point).
  it.each<[string, object]>([
    ['±0.4', { kind: 'rectangular', low: -0.4, high: 0.4 }],
    ['+-0.4', { kind: 'rectangular', low: -0.4, high: 0.4 }],
    ['+/- 0.4', { kind: 'rectangular', low: -0.4, high: 0.4 }],
    ['±1/64 in', { kind: 'rectangular', low: -0.396875, high: 0.396875 }],
    ['±0.4 triangular', { kind: 'triangular', low: -0.4, high: 0.4 }],
    ['0.05 sd', { kind: 'normal', mean: 0, sd: 0.05 }],
    ['half-normal 0.03', { kind: 'half-normal', sigma: 0.03 }],
    ['0..0.2', { kind: 'rectangular', low: 0, high: 0.2 }],
    ['-0.1 .. 0.2', { kind: 'rectangular', low: -0.1, high: 0.2 }],
    ['−0.1..0.2', { kind: 'rectangular', low: -0.1, high: 0.2 }],
    ['0..1/64 in', { kind: 'rectangular', low: 0, high: 0.396875 }],
    ['0.2..0.2', { kind: 'exactly', value: 0.2 }],
    ['arcsine ±0.1', { kind: 'arcsine', low: -0.1, high: 0.1 }],
    ['0', { kind: 'exactly', value: 0 }],
    ['±0', { kind: 'exactly', value: 0 }],
  ])('reads %s', (text, distribution) => {
    expect(spreadOf(LENGTH, text)).toEqual(distribution);
  });

  it('reads ±0.2 95% as a normal one with a standard deviation of 0.2 / 1.959964', () => {
    const read = spreadOf(LENGTH, '±0.2 95%');
    expect(read).toMatchObject({ kind: 'normal', mean: 0 });
    expect(spreadOf(LENGTH, '±0.2 95 %')).toEqual(read);
    // 0.2 / 1.959964 = 0.1020427, by hand.
    expect(typeof read === 'object' && read.kind === 'normal' && read.sd).toBeCloseTo(0.1020427, 7);
  });

  it('takes a run or degrees behind a range for both its ends', () => {
    expect(spreadOf(SLOPE, '-0.1..0.2 per 200')).toEqual({
      kind: 'rectangular',
      low: -0.0005,
      high: 0.001,
    });
    expect(spreadOf(STRAIN, '±0.1 %')).toEqual({ kind: 'rectangular', low: -0.001, high: 0.001 });
  });

  it.each([
    ['0.3', '0.3 is one figure where a spread is wanted; write ±0.3, or 0 to switch it off'],
    ['±-0.4', '±-0.4 has a negative size; write ±0.4'],
    ['-0.05 sd', '-0.05 sd has a negative size; write 0.05 sd'],
    ['0.2..0.1', '0.2..0.1 runs from the larger to the smaller; write 0.1..0.2'],
    ['0.1..0.2 mm', '0.1..0.2 mm has a unit on one side only; write the unit on both sides'],
    ['±0.2 99%', '±0.2 99% is for 99 %, and only 95 % is read; write ±0.2 95%'],
    ['±200', '±200 is more than any spread here can be; write at most 100 mm'],
    ['±0,4', '0,4 has a comma; write 0.4'],
    [
      'about 1',
      'about 1 is not a spread; write ±0.2, ±0.2 triangular, ±0.2 95%, 0.2 sd, half-normal 0.2, 0..0.2, arcsine ±0.2 or 0',
    ],
  ])('refuses %s', (text, fault) => {
    expect(spreadOf(LENGTH, text)).toBe(fault);
  });

  it('is a distribution or a fault for any text at all', () => {
    const pieces = fc.constantFrom(
      '±',
      '0.4',
      '..',
      ' sd',
      'half-normal ',
      ' in',
      ' per ',
      '-',
      '95%',
      ',',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 6 }), fc.string(), (parts, tail) => {
        for (const quantity of [LENGTH, SLOPE, STRAIN]) {
          const read = readSpread(quantity, parts.join('') + tail);
          if (!read.ok) expect(read.faults[0]!.message).not.toBe('');
          else expect(JSON.stringify(read.value.distribution)).not.toMatch(/null|NaN/);
        }
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});

describe('a size with its spread', () => {
  it('reads both, in the same unit or both in mm', () => {
    const read = readSized('11 in ±1/64 in');
    expect(read.ok && read.value.nominalMm).toBe(279.4);
    expect(read.ok && read.value.spread?.distribution).toEqual({
      kind: 'rectangular',
      low: -0.396875,
      high: 0.396875,
    });
    const bare = readSized('280 +-0.4');
    expect(bare.ok && bare.value.nominalMm).toBe(280);
    const oneSided = readSized('280.4 -0.8..0');
    expect(oneSided.ok && oneSided.value.nominalMm).toBe(280.4);
    expect(oneSided.ok && oneSided.value.spread?.distribution).toEqual({
      kind: 'rectangular',
      low: -0.8,
      high: 0,
    });
    const inch = readSized('11 1/16 in -1/32 in..0');
    expect(inch.ok && inch.value.nominalMm).toBeCloseTo(11.0625 * 25.4, 12);
    expect(inch.ok && inch.value.spread?.distribution).toEqual({
      kind: 'rectangular',
      low: -25.4 / 32,
      high: 0,
    });
    const alone = readSized('280');
    expect(alone.ok && alone.value.spread).toBe(null);
  });

  it.each([
    [
      '11 ±1/64 in',
      '11 ±1/64 in has a unit on one side only; write 11 in ±1/64 in or 11 mm ±1/64 in',
    ],
    ['11 in ±0.4', '11 in ±0.4 has a unit on one side only; write 11 in ±0.4 in or 11 in ±0.4 mm'],
    ['11 in -1/32..0 in', '-1/32..0 in has a unit on one side only; write the unit on both sides'],
    ['280 0.4..-1', '0.4..-1 runs from the larger to the smaller; write -1..0.4'],
    ['0 ±0.4', '0 ±0.4 is not above 0; write a size such as 280 ±0.4'],
    ['-5', '-5 is not above 0; write a size such as 280 ±0.4'],
  ])('refuses %s', (text, fault) => {
    const read = readSized(text);
    expect(read.ok ? '' : `${read.faults[0]!.message}; ${read.faults[0]!.instead}`).toBe(fault);
  });
});

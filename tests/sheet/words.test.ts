import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chanceText,
  deviationText,
  gapText,
  intervalText,
  lengthText,
  levelText,
  shareText,
  spreadText,
} from '../../src/sheet/words.ts';

describe('numbers as the bench reads them', () => {
  it('writes sizes with their unit and no idle digits', () => {
    expect(lengthText(280, 'mm')).toBe('280 mm');
    expect(lengthText(6.35, 'mm')).toBe('6.35 mm');
    expect(lengthText(0.005, 'mm')).toBe('0.005 mm');
    expect(lengthText(0, 'mm')).toBe('0 mm');
  });

  // 25.4 mm to the inch is exact.
  it('speaks inches to an inch shop', () => {
    expect(lengthText(6.35, 'inch')).toBe('0.25 in');
    expect(lengthText(280, 'inch')).toBe('11.024 in');
    expect(deviationText(0.254, 'inch')).toBe('0.0100 in');
    expect(gapText(25.4, 'inch')).toBe('1 in');
  });

  it('uses a true minus and never a negative nought', () => {
    expect(lengthText(-3, 'mm')).toBe('\u22123 mm');
    expect(deviationText(-0.0001, 'mm')).toBe('0.000 mm');
    expect(lengthText(-0, 'mm')).toBe('0 mm');
  });

  it('gives both ends of an interval the same digits', () => {
    expect(intervalText([0.0142, 0.1853], 'mm')).toBe('0.01 to 0.19 mm');
    expect(intervalText([-0.031, 0.042], 'mm')).toBe('\u22120.031 to 0.042 mm');
  });

  it('never promises a better chance than was found', () => {
    expect(chanceText(0.996)).toBe('99.6 %');
    expect(chanceText(0.98999)).toBe('98.9 %');
    expect(chanceText(1)).toBe('over 99.9 %');
    expect(chanceText(0)).toBe('under 0.1 %');
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.9994, noNaN: true }), (share) => {
        expect(parseFloat(chanceText(share)) / 100).toBeLessThanOrEqual(share + 1e-9);
      }),
      { seed: 1 },
    );
  });

  it('never shows a gap wider than it is', () => {
    expect(gapText(14, 'mm')).toBe('14 mm');
    expect(gapText(34.88, 'mm')).toBe('34.8 mm');
  });

  it('writes shares and levels in per cent', () => {
    expect(shareText(0.617)).toBe('62 %');
    expect(shareText(0.001)).toBe('under 1 %');
    expect(shareText(1.004)).toBe('100 %');
    expect(shareText(1.07)).toBe('100 %');
    expect(levelText(0.995)).toBe('99.5 %');
  });

  it('says how far a size may be off', () => {
    expect(spreadText({ kind: 'rectangular', low: -0.4, high: 0.4 }, 'mm')).toBe('±0.4 mm');
    expect(spreadText({ kind: 'rectangular', low: 0, high: 0.2 }, 'mm')).toBe('0 mm to 0.2 mm');
    expect(spreadText({ kind: 'normal', mean: 0, sd: 0.5 }, 'mm')).toBe('±0.98 mm (95 in 100)');
  });
});

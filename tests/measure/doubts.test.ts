import { describe, expect, it } from 'vitest';
import { doubtsOf } from '../../src/measure/doubts.ts';
import { BOARD, luckOf, places, readWith, someBed } from './shop-beds.ts';

const FLAT = { leanX: 0.001, leanY: -0.0005, bowMm: 0, twist: 0 };
const kinds = (heights: Parameters<typeof doubtsOf>[0]) =>
  doubtsOf(heights, BOARD).map(({ kind }) => kind);
const sound = (seed: number) => readWith(FLAT, places(4, 3), luckOf(seed), 0.01);

describe('nonsense readings are said to be so', () => {
  it('too few, on one line, all the same', () => {
    expect(kinds(sound(1).slice(0, 3))).toEqual(['too few']);
    expect(kinds(sound(1).slice(0, 4))).toEqual(['on one line']);
    expect(kinds(sound(1).map((one) => ({ ...one, heightMm: 0.1 })))).toEqual(['all the same']);
    expect(kinds([])).toEqual(['too few']);
  });

  it('swapped axes, and places off the board', () => {
    const tall = places(3, 3).map(({ x, y }) => ({ at: { x: y, y: x }, heightMm: x / 1e4 }));
    expect(kinds(tall)).toEqual(['axes swapped']);
    const [first, ...rest] = sound(2);
    expect(doubtsOf([{ ...first!, at: { x: -5, y: 10 } }, ...rest], BOARD)).toEqual([
      { kind: 'off the board', index: 0 },
    ]);
  });

  it('one wild value, wherever it stands; not when it was read again', () => {
    for (let index = 0; index < 12; index++) {
      const heights = sound(3).map((one, k) =>
        k === index ? { ...one, heightMm: one.heightMm + 0.4 } : one,
      );
      const [doubt, ...others] = doubtsOf(heights, BOARD);
      expect(others).toEqual([]);
      expect(doubt).toMatchObject({ kind: 'wild', index });
      if (doubt?.kind === 'wild') expect(Math.abs(doubt.offMm - 0.4)).toBeLessThan(0.06);
      const again = { ...heights[index]!, heightMm: heights[index]!.heightMm + 0.01 };
      expect(kinds([...heights, again])).toEqual([]);
    }
  });

  it('and sound beds are not, more than about one in a thousand', () => {
    const alarms = Array.from({ length: 400 }, (_, k) => kinds(sound(100 + k)).length);
    // Four standard errors over 400 times the stated 0.001.
    expect(alarms.filter((count) => count > 0).length).toBeLessThanOrEqual(
      0.4 + 4 * Math.sqrt(0.4),
    );
    const bowed = Array.from({ length: 60 }, (_, k) => {
      const luck = luckOf(900 + k);
      return kinds(readWith(someBed(luck), places(4, 3), luck, 0.01)).length;
    });
    expect(bowed.filter((count) => count > 0)).toEqual([]);
  });
});

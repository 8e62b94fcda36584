import { describe, expect, it } from 'vitest';
import { discPlay, newPairs } from '../../src/setup/disc-play.ts';

// Source: reference/geometry.md section 3, "Two pins": diametral clearances c1, c2, spacing L of the pins, dL of the holes more.
// The round + slot column of that table is not offered here: every hole is round.
const ROUND_ROUND = [
  ['8 H7/g6 worst', 0.029, 0.029, 100, 0, 2.9e-4, 5e-9],
  ['the same, spacing off', 0.029, 0.029, 100, 0.02, 2.09979e-4, 5e-10],
  ['the same, far apart', 0.029, 0.029, 300, 0, 9.66667e-5, 5e-11],
  ['6 F7/m6 worst', 0.018, 0.018, 150, 0, 1.2e-4, 5e-9],
  ['loose', 2, 2, 20, 0, 0.100041714, 5e-10],
  ['loose, spacing off', 2, 1, 20, 0.5, 0.069857233, 5e-10],
] as const;

/** The same table's "grid brute force of the contact problem". */
const BRUTE_FORCE = [
  [0.029, 0.029, 100, 0, 0.00029, 5e-9],
  [0.029, 0.029, 100, 0.02, 0.00020998, 5e-9],
  [2, 2, 20, 0, 0.10004144, 4e-7],
  [2, 1, 20, 0.5, 0.06985719, 4e-7],
] as const;

function twoPins(c1: number, c2: number, spacing: number, longer: number) {
  const pairs = newPairs(2);
  // Pins on a line at 30 degrees to the frame, holes on a line at 31: the best fit takes that degree out.
  const along = (degree: number, mm: number) => [
    mm * Math.cos((degree * Math.PI) / 180),
    mm * Math.sin((degree * Math.PI) / 180),
  ];
  const [pin, hole] = [along(30, spacing), along(31, spacing + longer)];
  pairs.pinA.set([5, 5 + pin[0]!]);
  pairs.pinB.set([-3, -3 + pin[1]!]);
  pairs.holeA.set([6, 6 + hole[0]!]);
  pairs.holeB.set([-3, -3 + hole[1]!]);
  pairs.playMm.set([c1 / 2, c2 / 2]);
  const play = discPlay(pairs, 0, 1);
  play.load();
  return play;
}

/** Sines between which something is left, found by turning alone. */
function foundByTurning(play: ReturnType<typeof twoPins>): number {
  let [least, most] = [0, 0.5];
  for (let step = 0; step < 40; step++) {
    const middle = (least + most) / 2;
    if (play.turn(middle)) least = middle;
    else most = middle;
  }
  return least;
}

describe('two holes on two pins', () => {
  it.each(ROUND_ROUND)(
    'turn as far as published: %s',
    (_, c1, c2, spacing, longer, rad, digits) => {
      const play = twoPins(c1, c2, spacing, longer);
      const [low, high] = play.limits()!;
      expect(Math.abs(Math.asin(high) - rad)).toBeLessThan(digits);
      expect(low).toBe(-high);
      expect(Math.abs(foundByTurning(play) - high)).toBeLessThan(1e-7);
    },
  );

  it.each(BRUTE_FORCE)(
    'turn as far as a grid found: %d, %d on %d',
    (c1, c2, spacing, longer, rad, digits) => {
      const high = twoPins(c1, c2, spacing, longer).limits()![1];
      expect(Math.abs(Math.asin(high) - rad)).toBeLessThan(digits);
    },
  );

  it('do not go on where the spacing is off by more than half the clearances together', () => {
    expect(twoPins(0.1, 0.06, 100, 0.081).limits()).toBeNull();
    expect(twoPins(0.1, 0.06, 100, -0.081).limits()).toBeNull();
    expect(twoPins(0.1, 0.06, 100, 0.079).limits()).not.toBeNull();
  });
});

import { cosineOf, sineOf, tangentOf } from '../num/elementary.ts';

/** Directions in which an outline is looked at first: every 11.25 degrees, as columns of unit vectors. */
export const FAN = 32;
export const FAN_X = Float64Array.from({ length: FAN }, (_, k) =>
  cosineOf((2 * Math.PI * k) / FAN),
);
export const FAN_Y = Float64Array.from({ length: FAN }, (_, k) => sineOf((2 * Math.PI * k) / FAN));

/** A direction between two of the fan is a fan direction and this much to its left or right, at most. */
export const FAN_STEP = tangentOf((2 * Math.PI) / FAN);

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The least of a function of one number with one dip between `low` and `high`, by golden sections:
 * each leaves 0.618 of the stretch.
 */
export function dipBetween(
  f: (s: number) => number,
  from: number,
  to: number,
  steps: number,
): number {
  let [low, high] = [from, to];
  let a = high - GOLDEN * (high - low);
  let b = low + GOLDEN * (high - low);
  let atA = f(a);
  let atB = f(b);
  for (let step = 0; step < steps; step++) {
    if (atA < atB) {
      high = b;
      b = a;
      atB = atA;
      a = high - GOLDEN * (high - low);
      atA = f(a);
    } else {
      low = a;
      a = b;
      atA = atB;
      b = low + GOLDEN * (high - low);
      atB = f(b);
    }
  }
  return Math.min(atA, atB);
}

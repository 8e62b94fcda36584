import { expOf } from '../../num/elementary.ts';

/**
 * Hours after which 1/e of a change is still to come (of its slowest part) in a board 25 mm thick that is
 * open on both faces. An estimate of ours: a surface follows in minutes and a whole board takes weeks, and
 * this is 95 % in three weeks.
 */
const HOURS_AT_25_MM = 7 * 24;
const TERMS = 400;

/**
 * The share, 0..1, of a change of moisture that a board has gone through after so many hours: a slab in
 * which moisture spreads by diffusion from both faces, so the time goes with the square of the thickness.
 * Source: J. Crank, The Mathematics of Diffusion, 2nd ed. 1975, equation 4.18.
 */
export function reachedShare(hours: number, thickMm: number): number {
  const times = hours / (HOURS_AT_25_MM * (thickMm / 25) ** 2);
  let left = 0;
  for (let n = TERMS - 1; n >= 0; n--) {
    const odd = 2 * n + 1;
    left += (8 / (Math.PI * odd) ** 2) * expOf(-odd * odd * times);
  }
  // The terms that are left out are the last of a change that has hardly begun.
  return Math.max(0, Math.min(1, 1 - left));
}

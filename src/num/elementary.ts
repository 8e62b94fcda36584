/**
 * Logarithm, exponential and sine from `+ - * /` alone: the engines' own may differ in the last bit from
 * one browser to another, and the same seed must give the same bytes everywhere.
 */

const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;

/** Natural logarithm of a positive finite `x`, to about one unit in the last place. */
export function logOf(x: number): number {
  let power = 0;
  let m = x;
  while (m >= 1.4142135623730951) {
    m *= 0.5;
    power += 1;
  }
  while (m < 0.7071067811865476) {
    m *= 2;
    power -= 1;
  }
  const s = (m - 1) / (m + 1);
  const q = s * s;
  // ln m = 2 artanh s; q is below 0.0295, so the next term would be 1e-18.
  let sum = 0;
  for (let k = 23; k >= 3; k -= 2) sum = (sum + 1 / k) * q;
  return power * LN2_HIGH + (2 * s + (2 * s * sum + power * LN2_LOW));
}

/** Exponential of `x` between -700 and 700. */
export function expOf(x: number): number {
  const power = Math.round(x / (LN2_HIGH + LN2_LOW));
  const r = x - power * LN2_HIGH - power * LN2_LOW;
  // r is below 0.3466: the term after the 14th is 1e-18.
  let sum = 1;
  for (let k = 14; k >= 1; k--) sum = 1 + (r * sum) / k;
  let value = sum;
  for (let k = 0; k < power; k++) value *= 2;
  for (let k = 0; k > power; k--) value *= 0.5;
  return value;
}

/** Sine of `x` between -pi/2 and pi/2. */
export function sineOf(x: number): number {
  const q = x * x;
  // The term after x^21 is below 1e-18.
  let sum = 1;
  for (let k = 20; k >= 2; k -= 2) sum = 1 - (q * sum) / (k * (k + 1));
  return x * sum;
}

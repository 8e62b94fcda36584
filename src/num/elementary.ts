/**
 * Logarithm, exponential, sine and their kin from `+ - * / sqrt` alone: the engines' own differ in the last
 * bit from one browser to another, and the same seed must give the same bytes everywhere.
 */

const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;

/** Natural logarithm of `x`, to about one unit in the last place. */
export function logOf(x: number): number {
  if (!(x > 0 && x < Infinity)) return x === 0 ? -Infinity : x > 0 ? x : NaN;
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

/** Exponential of `x`. */
export function expOf(x: number): number {
  if (x < -746) return 0;
  if (x > 710) return Infinity;
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

/** A quarter turn in three parts: the first two have 33 bits, so that a few thousand times each is exact. */
const QUARTER_HIGH = 1.5707963267341256;
const QUARTER_MIDDLE = 6.077100506303966e-11;
const QUARTER_LOW = 2.0222662487959506e-21;

/** Up to here, radians, the parts of a quarter turn keep all digits. */
const MOST_RAD = 1e5;

/** 1 / 3!, -1 / 5!, ... from the highest power down: the next term is below 1e-19 of the sine. */
const SINE = seriesOf([17, 15, 13, 11, 9, 7, 5, 3]);
/** The same of 1 / 4!, -1 / 6!, ...: below 1e-20. */
const COSINE = seriesOf([18, 16, 14, 12, 10, 8, 6, 4]);

function seriesOf(powers: readonly number[]): readonly number[] {
  return powers.map((power) => {
    let factorial = 1;
    for (let k = 2; k <= power; k++) factorial *= k;
    // 18! is below 2^53: exact.
    return (power % 4 === 3 || power % 4 === 2 ? -1 : 1) / factorial;
  });
}

/** Sine of `x` radians, to one unit in the last place up to 1e5; beyond that full turns are taken off as doubles. */
export const sineOf = (x: number): number => turned(x, 0);

/** Cosine of `x` radians, as good as the sine. */
export const cosineOf = (x: number): number => turned(x, 1);

/** Tangent of `x` radians, to two units in the last place. */
export const tangentOf = (x: number): number => sineOf(x) / cosineOf(x);

/** Sine of `x` and so many quarter turns more. */
function turned(turn: number, quarters: 0 | 1): number {
  const x = Math.abs(turn) <= MOST_RAD ? turn : turn % (2 * Math.PI);
  const n = Math.round(x / (QUARTER_HIGH + QUARTER_MIDDLE));
  const near = x - n * QUARTER_HIGH - n * QUARTER_MIDDLE;
  const r = near - n * QUARTER_LOW;
  const rest = near - r - n * QUARTER_LOW;
  // The last two bits of a negative whole number are those of its two's complement.
  const quadrant = (n + quarters) & 3;
  const value = quadrant % 2 === 0 ? nearSine(r, rest) : nearCosine(r, rest);
  return quadrant < 2 ? value : -value;
}

/** Sine of `r + rest` within an eighth of a turn of nought. */
function nearSine(r: number, rest: number): number {
  const q = r * r;
  let sum = 0;
  for (const one of SINE) sum = sum * q + one;
  return r + (r * q * sum + rest * (1 - q / 2));
}

function nearCosine(r: number, rest: number): number {
  const q = r * r;
  let sum = 0;
  for (const one of COSINE) sum = sum * q + one;
  const most = 1 - q / 2;
  // What the rounding of `most` has lost is put back.
  return most + (1 - most - q / 2 + (q * q * sum - r * rest));
}

/** Angles near which an arc tangent is looked for, and what their doubles leave out. */
const STEPS = [
  { tangent: 0, high: 0, low: 0 },
  { tangent: 0.5, high: 0.4636476090008061, low: 2.2698777452961687e-17 },
  { tangent: 1, high: 0.7853981633974483, low: 3.061616997868383e-17 },
  { tangent: 1.5, high: 0.982793723247329, low: 1.3903311031230998e-17 },
] as const;
/** Tangents between the steps. */
const BETWEEN = [7 / 16, 11 / 16, 19 / 16, 39 / 16] as const;
/** 1 / 3, 1 / 5, ... 1 / 43: within 7 / 16 the next term is 1e-17. */
const ARC_TANGENT = Array.from({ length: 21 }, (_, k) => 1 / (43 - 2 * k));
const QUARTER_TURN = { high: 1.5707963267948966, low: 6.123233995736766e-17 };

/** Angle of the direction (x, y), above -pi and up to pi, to two units in the last place; 0 of no direction. */
export function angleOf(y: number, x: number): number {
  const [far, near] = [Math.abs(y), Math.abs(x)];
  if (far === 0) return x < 0 ? Math.PI : 0;
  const steep = near === 0 ? QUARTER_TURN.high : arcTangentOf(far / near);
  // pi is twice the quarter turn, with what that leaves out.
  const angle = x < 0 ? 2 * QUARTER_TURN.high - (steep - 2 * QUARTER_TURN.low) : steep;
  return y < 0 ? -angle : angle;
}

/** Arc tangent, to two units in the last place. */
export function arcTangentOf(t: number): number {
  const size = Math.abs(t);
  const k = BETWEEN.findIndex((limit) => size < limit);
  // tan(a - b) = (tan a - tan b) / (1 + tan a tan b); beyond the last step from a quarter turn down.
  const { tangent, high, low } = k < 0 ? { ...QUARTER_TURN, tangent: 0 } : STEPS[k]!;
  const r = k < 0 ? -1 / size : (size - tangent) / (1 + size * tangent);
  const q = r * r;
  let sum = 0;
  for (const one of ARC_TANGENT) sum = one - q * sum;
  const angle = high + (r - (r * q * sum - low));
  return t < 0 ? -angle : angle;
}

/** Angle whose cosine is `c`, -1 to 1, to a few units in the last place. */
export const arcCosineOf = (c: number): number => 2 * angleOf(Math.sqrt(1 - c), Math.sqrt(1 + c));

/** Length of (x, y), whose square must not overflow. */
export const hypotenuse = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** Cube root of a positive `x`, to two units in the last place. */
export function cubeRootOf(x: number): number {
  const near = expOf(logOf(x) / 3);
  return near - (near * near * near - x) / (3 * near * near);
}

/** Most digits that anybody can ask for; a third costs a hundred times the trials of a second. */
export const MOST_DIGITS = 4;

/**
 * Half of the last of `digits` significant digits of a standard deviation, or of any size.
 * Source: JCGM 101:2008, 7.9.2: u = c x 10^l with c of that many digits gives 0.5 x 10^l.
 */
export function toleranceOf(size: number, digits: number): number {
  if (size === 0 || !Number.isFinite(size)) return size;
  // Written as decimals, since powers of ten may differ in their last bit from one engine to another.
  let power = Number(size.toExponential().split('e')[1]) - (digits - 1);
  // 0.0996 has one digit as 0.1, not as 10 x 0.01.
  if (Math.round(size / tenTo(power)) >= tenTo(digits)) power += 1;
  return 0.5 * tenTo(power);
}

const tenTo = (power: number): number => Number(`1e${power}`);

/** How many significant digits of `size` a number that is sure to `sure` has, 0 to 4. */
export function digitsOf(size: number, sure: number): number {
  let digits = 0;
  while (digits < MOST_DIGITS && sure <= toleranceOf(size, digits + 1)) digits += 1;
  return digits;
}

/** Fewer bad or good parts than one in a thousand are told as that, without digits. */
export const RARE = 0.001;

/** How many digits of a chance are certain: those of its smaller side, since 99.6 % good is 0.4 % bad. */
export function chanceDigits(
  chance: number,
  sure: number,
  interval: readonly [number, number],
): number {
  const small = Math.min(chance, 1 - chance);
  const most = chance < 0.5 ? interval[1] : 1 - interval[0];
  return most < RARE ? MOST_DIGITS : small === 0 ? 0 : digitsOf(small, sure);
}

import { momentsOf, symmetricInterval } from '../num/summary.ts';

const BLOCKS = 10;

/**
 * Numerical tolerance that the trials reached for mean, standard deviation and both ends of the
 * 95 % interval: twice the largest standard error among ten blocks.
 * Source: JCGM 101:2008, 7.9.4.
 */
export function sureTo(values: Float64Array): number {
  const size = Math.floor(values.length / BLOCKS);
  if (size < 100) return Infinity;
  const blocks = Array.from({ length: BLOCKS }, (_, b) => {
    const block = values.slice(b * size, (b + 1) * size).sort();
    const { mean, sd } = momentsOf(block);
    const [low, high] = symmetricInterval(block, 0.95);
    return [mean, sd, low, high];
  });
  const errors = [0, 1, 2, 3].map((k) => {
    const figures = Float64Array.from(blocks, (block) => block[k]!);
    return momentsOf(figures).sd / Math.sqrt(BLOCKS);
  });
  return 2 * Math.max(...errors);
}

/**
 * Half of the last of `digits` significant digits of a standard deviation.
 * Source: JCGM 101:2008, 7.9.2: u = c x 10^l with c of that many digits gives 0.5 x 10^l.
 */
export function toleranceOf(sd: number, digits: 1 | 2): number {
  if (sd === 0) return 0;
  let power = Math.floor(Math.log10(sd)) - (digits - 1);
  // 0.0996 has one digit as 0.1, not as 10 x 0.01.
  if (Math.round(sd / 10 ** power) >= 10 ** digits) power += 1;
  return 0.5 * 10 ** power;
}

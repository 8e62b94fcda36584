import { normalShareBelow } from './textbook.ts';

/**
 * Expected greatest less least of `n` independent standard normal values: the d2 of control charts.
 * The integral of 1 - F^n - (1 - F)^n by Simpson's rule over 8 sd each way, good to about 1e-6.
 * Source: L. H. C. Tippett, Biometrika 17 (1925) 364-387.
 */
export function expectedRange(n: number): number {
  if (n < 2) return 0;
  const [steps, top] = [400, 8];
  let sum = 0;
  for (let k = 0; k <= steps; k++) {
    const below = normalShareBelow(-top + (2 * top * k) / steps);
    const weight = k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2;
    sum += weight * (1 - below ** n - (1 - below) ** n);
  }
  return (sum * 2 * top) / steps / 3;
}

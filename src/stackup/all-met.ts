import type { Judged } from '../setup/judged.ts';
import { isWithin } from './plain.ts';

/** Whether a trial meets every need; `at` tells its result in a column. */
export function allMet(judged: readonly Judged[], at: (column: number) => number): boolean {
  return judged.every((one) => {
    if (one.shape === 'plain') {
      const upper = one.columnCount === 2 ? one.at + 1 : one.at;
      return isWithin(at(one.at), at(upper), one.low, one.high);
    }
    const [x, y] = [at(one.x), at(one.x + 1)];
    return Math.sqrt(x * x + y * y) <= one.high;
  });
}

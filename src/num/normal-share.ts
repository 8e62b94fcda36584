import { hermiteAt, type HermiteTable } from './hermite-table.ts';
import { normalShareBelow } from './textbook.ts';

const STEP = 1 / 64;
const REACH = 8;

/** Share of the standard normal below `z`, to 1e-9 and many times as fast as the textbook's. */
export const normalShare = (z: number): number => hermiteAt(TABLE, z);

const TABLE: HermiteTable = {
  from: -REACH,
  step: STEP,
  nodes: Float64Array.from({ length: 2 * ((2 * REACH) / STEP + 1) }, (_, k) => {
    const z = -REACH + (k >> 1) * STEP;
    return k % 2 === 0
      ? normalShareBelow(z)
      : (STEP * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
  }),
};

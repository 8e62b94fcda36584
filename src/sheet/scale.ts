import { scaleLinear } from 'd3-scale';

/** A straight scale that takes one range to another; the only file that speaks to d3-scale. */
export const straightScale = (
  from: readonly [number, number],
  to: readonly [number, number],
): ((value: number) => number) => scaleLinear(from, to);

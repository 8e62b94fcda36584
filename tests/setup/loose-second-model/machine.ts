import type { Off } from '../misalign.ts';
import type { XY } from '../second-model/vectors.ts';

/** A work zero as it was found: where it truly is, and from where the machine's map acts. */
export interface Zero {
  readonly at: XY;
  readonly nominal: XY;
  /** Where X was touched: at this y of the machine, this high above the bed. */
  readonly yTouchedMm: number;
  readonly heightMm: number;
}

/** A zero of the machine's own, as for drilling the bed or cutting a nest. */
export const ownZero = (corner: XY, heightMm: number): Zero => ({
  at: corner,
  nominal: corner,
  yTouchedMm: corner.y,
  heightMm,
});

/** Where the machine really cuts what it is told to, at a height above the bed. */
export function struck(off: Off, zero: Zero, cut: string, told: XY, heightMm: number): XY {
  const get = (key: string): number => off[key] ?? 0;
  const noise = (axis: 'x' | 'y'): number =>
    get(`repeatability/${cut}/${axis}`) +
    get(`lost-motion/${cut}/${axis}`) +
    get(`cutter-lean/${axis}`) * (heightMm - zero.heightMm);
  return {
    x:
      zero.at.x +
      (1 + get('scale/x')) * (told.x - zero.nominal.x) +
      get('machine-lean') * (told.y - zero.yTouchedMm) +
      noise('x'),
    y: zero.at.y + (1 + get('scale/y')) * (told.y - zero.nominal.y) + noise('y'),
  };
}

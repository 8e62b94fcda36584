import { misalign } from '../misalign.ts';
import { secondLoose } from './second-loose.ts';
import { RestsTwice } from './room.ts';
import type { LooseSetUp } from './set-ups.ts';

/**
 * How far the models may be apart, mm. Bound: rounding over places of 400 mm. Turned as far as it goes: two circles then touch,
 * and where they do is the root of a rounding, and what then is left between two walls is thinner than rounding, and its middle as uncertain as 1e-11 mm over the sine
 * between them. Pushed: production looks for the best turn by comparing how far
 * each lets it go, which near the best is flat: a rounding of 1e-14 mm over holes 100 mm apart is 2e-6 mm of a far place.
 */
export const allowedMm = ({ kind, take }: LooseSetUp): number =>
  kind === 'fence-and-dowel'
    ? ALLOWED_MM.bound
    : take === 'turned' && kind !== 'dowels'
      ? ALLOWED_MM.turnedInNest
      : ALLOWED_MM[take];

export const ALLOWED_MM = { bound: 1e-9, turned: 5e-6, turnedInNest: 1e-4, pushed: 1e-5 } as const;

/** Null where a push rests in two places, of which either is right. */
export function apartMm({ job, off, at }: LooseSetUp): number | null {
  const [x, y] = misalign(job, off, at);
  const second = secondOrNull(job, off, at);
  if (second === null) return null;
  const [secondX, secondY] = second;
  return Math.hypot(x - secondX, y - secondY);
}

export function secondOrNull(
  ...of: Parameters<typeof secondLoose>
): readonly [number, number] | null {
  try {
    return secondLoose(...of);
  } catch (error) {
    if (error instanceof RestsTwice) return null;
    throw error;
  }
}

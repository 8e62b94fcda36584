import type { Blank, DowelHoles, Locating, Turn } from './job.ts';
import { dowelHolesIn } from './located.ts';

/**
 * How far from its front-up place the blank lies when it is turned over, mm, layout directions: nothing on stops and in a
 * nest; about dowels, twice what their line is off its middle.
 */
export function shiftWhenTurned(
  locating: Locating | null,
  turn: Turn | undefined,
  blank: Pick<Blank, 'widthMm' | 'heightMm'>,
): { readonly x: number; readonly y: number } {
  const nowhere = { x: 0, y: 0 };
  if (turn === undefined || locating === null) return nowhere;
  const holes = dowelHolesIn(locating);
  if (holes === null || holes.at.length === 0) return nowhere;
  const axis = turnedAxis(turn);
  const sizeMm = axis === 'x' ? blank.widthMm : blank.heightMm;
  return { ...nowhere, [axis]: 2 * dowelLineMm(holes, axis) - sizeMm };
}

/** The axis along which edges change places. */
export const turnedAxis = (turn: Turn): 'x' | 'y' => (turn === 'about-y' ? 'x' : 'y');

/** Where the line stands about which holes fall on each other, half-way between the outermost, mm. */
export function dowelLineMm({ at }: DowelHoles, axis: 'x' | 'y'): number {
  const along = at.map((place) => place[axis]);
  return (Math.min(...along) + Math.max(...along)) / 2;
}

import type { Blank, Locating, Turn } from './job.ts';

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
  const holes =
    locating.locating === 'dowels'
      ? locating.dowels
      : locating.locating === 'fence-and-dowel'
        ? locating.fenceAndDowel.dowel
        : null;
  if (holes === null || holes.at.length === 0) return nowhere;
  const axis = turn === 'about-y' ? 'x' : 'y';
  const along = holes.at.map((place) => place[axis]);
  const sizeMm = axis === 'x' ? blank.widthMm : blank.heightMm;
  return { ...nowhere, [axis]: Math.min(...along) + Math.max(...along) - sizeMm };
}

import type { Point } from '../plane/point.ts';
import type { Landing } from './landing.ts';

/**
 * Where every point of one cut lands, mm, blank frame: the nominal point `at + (x, y)` lands off by
 * `(offX + xx x + xy y, offY + yx x + yy y)`. Machine, pose and wood are all affine, and one cut has
 * one draw of each noise, so three landings tell it exactly.
 */
export interface AffineLanding {
  readonly at: Point<'blank'>;
  readonly locate: (draws: Float64Array, i: number) => void;
  /** offX, offY, xx, xy, yx, yy; filled by `locate`. */
  readonly off: Float64Array;
}

const ARM_MM = 128;

/** `land` tells where one place of the cut lands. */
export function affineLanding(
  at: Point<'blank'>,
  land: (at: Point<'blank'>) => Landing,
): AffineLanding {
  const here = land(at);
  const right = land({ x: at.x + ARM_MM, y: at.y });
  const up = land({ x: at.x, y: at.y + ARM_MM });
  const off = new Float64Array(6);
  return {
    at,
    off,
    locate: (draws, i) => {
      here.locate(draws, i);
      right.locate(draws, i);
      up.locate(draws, i);
      off[0] = here.x();
      off[1] = here.y();
      off[2] = (right.x() - here.x()) / ARM_MM;
      off[3] = (up.x() - here.x()) / ARM_MM;
      off[4] = (right.y() - here.y()) / ARM_MM;
      off[5] = (up.y() - here.y()) / ARM_MM;
    },
  };
}

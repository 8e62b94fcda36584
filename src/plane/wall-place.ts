/** How one outline lands in one trial. */
export interface RingMove {
  /** A nominal place `at + (x, y)` lands off by (offX + xx x + xy y, offY + yx x + yy y): mm, pure numbers. */
  readonly off: ArrayLike<number>;
  /** How much larger the cutter's radius is than planned, mm. */
  readonly growsMm: number;
  /** How much more it is at a place of the axis, mm, and its slopes; null: nowhere. */
  readonly more: RingGrowth | null;
}

export interface RingGrowth {
  readonly at: (x: number, y: number) => number;
  perX: number;
  perY: number;
}

/** Tells where walls land; made once, loaded in each trial. */
export interface WallPlacer {
  readonly load: (move: RingMove) => void;
  /** The wall that the axis at (x, y), from the feature's own place, faces in the direction (wallX, wallY). */
  readonly place: (x: number, y: number, wallX: number, wallY: number) => void;
  readonly x: () => number;
  readonly y: () => number;
  /** The most that the cutter was larger at any place since it was loaded, mm. */
  readonly mostMore: () => number;
}

/**
 * The axis goes through the machine's map; the cutter stays round. A direction square to a wall goes
 * through the map as the inverse of its transpose does. Where the cutter grows along its way, with slopes q,
 * what it leaves leans: the direction u of its wall is that of s w - q, both through the map, of length 1.
 */
export function wallPlacer(
  cutterMm: number,
  at: { readonly x: number; readonly y: number },
): WallPlacer {
  let [offX, offY, xx, xy, yx, yy] = [0, 0, 0, 0, 0, 0];
  let [radius, most] = [cutterMm, 0];
  let [qx, qy] = [0, 0];
  let more: RingGrowth | null = null;
  let [landedX, landedY] = [0, 0];
  return {
    load: (move) => {
      const { off } = move;
      offX = off[0]! + at.x;
      offY = off[1]! + at.y;
      xx = off[2]!;
      xy = off[3]!;
      yx = off[4]!;
      yy = off[5]!;
      radius = cutterMm + move.growsMm;
      more = move.more;
      most = 0;
      if (more === null) return;
      const size = (1 + xx) * (1 + yy) - xy * yx;
      qx = ((1 + yy) * more.perX - yx * more.perY) / size;
      qy = ((1 + xx) * more.perY - xy * more.perX) / size;
    },
    place: (x, y, wallX, wallY) => {
      let ux = (1 + yy) * wallX - yx * wallY;
      let uy = (1 + xx) * wallY - xy * wallX;
      const length2 = ux * ux + uy * uy;
      let far = radius;
      if (more === null) {
        const length = Math.sqrt(length2);
        ux /= length;
        uy /= length;
      } else {
        const here = more.at(x, y);
        far += here;
        most = Math.max(most, Math.abs(here));
        const across = ux * qx + uy * qy;
        const scale =
          (across + Math.sqrt(across * across + length2 * (1 - qx * qx - qy * qy))) / length2;
        ux = scale * ux - qx;
        uy = scale * uy - qy;
      }
      landedX = offX + x + xx * x + xy * y + far * ux;
      landedY = offY + y + yx * x + yy * y + far * uy;
    },
    x: () => landedX,
    y: () => landedY,
    mostMore: () => most,
  };
}

import { invariant } from '../num/invariant.ts';
import { surfaceThrough, type Surface } from '../num/surface.ts';
import type { BedHeights } from './shop.ts';

const KNOWN = new WeakMap<BedHeights, Surface>();

/** The surface of a bed through its heights, mm, bed frame; worked out once for each set of heights. */
export function bedSurface(heights: BedHeights): Surface {
  const known = KNOWN.get(heights);
  if (known !== undefined) return known;
  const { points, gaugeSdMm, unevenSdMm, reachMm } = heights;
  const surface = surfaceThrough(
    points.map(({ at, heightMm }) => ({ x: at.x, y: at.y, value: heightMm })),
    { gaugeSd: gaugeSdMm, unevenSd: unevenSdMm, reach: reachMm },
  );
  invariant(surface !== null, 'the heights of the bed fix no plane');
  KNOWN.set(heights, surface);
  return surface;
}

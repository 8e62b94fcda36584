import { surfaceThrough } from '../../src/num/surface.ts';
import { bedHeightsOf } from '../../src/measure/bed-surface.ts';
import { heightOf, luckOf, places, readWith, someBed, type TrueBed } from './shop-beds.ts';

export interface Sounded {
  /** Differences of height between two places of the bed: what is left unknown by the surface and by the plane alone. */
  readonly offSurface: number;
  readonly offPlane: number;
  readonly isHeld: boolean;
}

/** A bed with bow, twist and waves, read in rows with a dial: what is told of pairs of places in between. */
export function soundedBed(
  seed: number,
  nx: number,
  ny: number,
  gaugeSd: number,
): readonly Sounded[] {
  const luck = luckOf(seed);
  const bed: TrueBed = someBed(luck);
  const wave = {
    mm: luck.uniform(0, 0.05),
    over: luck.uniform(150, 500),
    at: luck.uniform(0, 500),
  };
  const waves = (x: number): number => wave.mm * triangle((x + wave.at) / wave.over);
  const at = places(nx, ny);
  const readings = readWith(bed, at, luck, gaugeSd).map((one) => ({
    ...one,
    heightMm: one.heightMm + waves(one.at.x),
  }));
  const heights = bedHeightsOf(readings, gaugeSd, { measured: '2026-11-20', because: '' });
  const surface = surfaceThrough(
    heights.points.map(({ at: place, heightMm }) => ({ x: place.x, y: place.y, value: heightMm })),
    { gaugeSd, unevenSd: heights.unevenSdMm, reach: heights.reachMm },
  )!;
  const { plane } = surface;
  return Array.from({ length: 6 }, () => {
    const [a, b] = [0, 1].map(() => ({ x: luck.uniform(40, 560), y: luck.uniform(30, 370) }));
    const truth = heightOf(bed, b!) + waves(b!.x) - heightOf(bed, a!) - waves(a!.x);
    const told = surface.at(b!.x, b!.y) - surface.at(a!.x, a!.y);
    const flat = plane.perX * (b!.x - a!.x) + plane.perY * (b!.y - a!.y);
    const sd = Math.hypot(surface.sdAt(a!.x, a!.y), surface.sdAt(b!.x, b!.y));
    return {
      offSurface: told - truth,
      offPlane: flat - truth,
      isHeld: Math.abs(told - truth) < 1.96 * sd,
    };
  });
}

/** Up and down between -1 and 1. */
const triangle = (turns: number): number => 4 * Math.abs(turns - Math.floor(turns) - 0.5) - 1;

import { differenceOf, unionOf } from '../../plane/clip.ts';
import { signedAreaMm2 } from '../../plane/measure.ts';
import type { Outline } from '../../plane/outline.ts';
import { regionsOf } from '../../plane/regions.ts';

/** Upright walls and level faces: all that is seen of something that is cut from above and below. Layout frame, mm above the bed. */
export interface Block {
  readonly layers: readonly Layer[];
  readonly faces: readonly LevelFace[];
}

/** The same plan all the way from one height to another: outer lines counter-clockwise, holes clockwise. */
export interface Layer {
  readonly loops: readonly Outline<'layout'>[];
  readonly lowMm: number;
  readonly highMm: number;
}

/** A level face that is seen: its outer line counter-clockwise, then its holes. */
export interface LevelFace {
  readonly loops: readonly Outline<'layout'>[];
  readonly atMm: number;
  readonly looks: 'up' | 'down';
}

/** What a cut takes away. */
export interface Taken {
  readonly loops: readonly Outline<'layout'>[];
  readonly lowMm: number;
  readonly highMm: number;
}

/** What is left of an upright piece when some cuts are taken away, as layers between the heights at which its plan changes. */
export function blockOf(
  outline: readonly Outline<'layout'>[],
  lowMm: number,
  highMm: number,
  cuts: readonly Taken[],
): Block {
  const inside = cuts
    .flatMap((cut) => [cut.lowMm, cut.highMm])
    .filter((z) => z > lowMm && z < highMm);
  const heights = [...new Set([lowMm, ...inside, highMm])].sort((a, b) => a - b);
  const layers = heights.slice(1).map((high, k): Layer => {
    const low = heights[k]!;
    const middle = (low + high) / 2;
    const gone = cuts.filter((cut) => cut.lowMm < middle && cut.highMm > middle);
    const loops = gone.length === 0 ? outline : differenceOf(outline, unionEach(gone));
    return {
      loops: loops.filter((loop) => Math.abs(signedAreaMm2(loop)) > SPECK_MM2),
      lowMm: low,
      highMm: high,
    };
  });
  return { layers, faces: [...facesOf(layers, 'up'), ...facesOf(layers, 'down')] };
}

/** Smaller pieces of a plan are what rounding leaves, mm2. */
const SPECK_MM2 = 0.01;

const unionEach = (gone: readonly Taken[]): readonly Outline<'layout'>[] =>
  gone.length === 1 ? gone[0]!.loops : unionOf(gone.flatMap(({ loops }) => unionOf(loops)));

/** Of each layer what the next one on that side leaves bare. */
function facesOf(layers: readonly Layer[], looks: 'up' | 'down'): readonly LevelFace[] {
  return layers.flatMap((layer, k) => {
    const beside = layers[k + (looks === 'up' ? 1 : -1)];
    const bare = beside === undefined ? layer.loops : differenceOf(layer.loops, beside.loops);
    return regionsOf(bare)
      .filter(({ areaMm2 }) => areaMm2 > SPECK_MM2)
      .map(({ outlines }) => ({
        loops: outlines,
        atMm: looks === 'up' ? layer.highMm : layer.lowMm,
        looks,
      }));
  });
}

import type { Facet } from '../../jig/mesh.ts';
import type { Outline } from '../../plane/outline.ts';
import type { Block } from './block.ts';
import type { Scene, Thing } from './scene.ts';

/**
 * The scenes as the viewer reads them (`viewer/scene.ts` says the same from its side): JSON that may stand in
 * a page, all lengths whole hundredths of a millimetre.
 */
export function sceneData(scenes: readonly Scene[], titles: readonly string[]): string {
  const data = scenes.map(({ things }, k) => ({
    title: titles[k]!,
    things: things.map(thingData),
  }));
  // No name in it can end the script element that holds it.
  return JSON.stringify(data).replaceAll('<', '\\u003c');
}

const thingData = ({ kind, words, blocks, facets }: Thing) => ({
  kind,
  words,
  walls: facets.length > 0 ? [] : blocks.flatMap(wallsOf),
  faces: facets.length > 0 ? [] : blocks.flatMap(facesOf),
  triangles: trianglesOf(facets),
});

const wallsOf = ({ layers }: Block) =>
  layers.flatMap(({ loops, lowMm, highMm }) =>
    loops.map((loop) => ({ loop: flat(loop), low: whole(lowMm), high: whole(highMm) })),
  );

const facesOf = ({ faces }: Block) =>
  faces.map(({ loops, atMm, looks }) => ({
    loops: loops.map(flat),
    at: whole(atMm),
    up: looks === 'up',
  }));

/** Corners in a row, and three numbers of them for each triangle. */
function trianglesOf(facets: readonly Facet[]) {
  const known = new Map<string, number>();
  const corners: number[] = [];
  const indexes: number[] = [];
  for (const facet of facets) {
    const at = facet.map(({ x, y, z }) => {
      const [a, b, c] = [whole(x), whole(y), whole(z)];
      const key = `${a} ${b} ${c}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      known.set(key, known.size);
      corners.push(a, b, c);
      return known.size - 1;
    });
    // Facets of the modeller are convex.
    for (let k = 2; k < at.length; k++) {
      const [a, b, c] = [at[0]!, at[k - 1]!, at[k]!];
      if (a !== b && b !== c && a !== c) indexes.push(a, b, c);
    }
  }
  return { corners, indexes };
}

const flat = (loop: Outline<'layout'>): readonly number[] =>
  loop.flatMap(({ x, y }) => [whole(x), whole(y)]);
const whole = (mm: number): number => Math.round(mm * 100);

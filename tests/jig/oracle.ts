import Module from 'manifold-3d';
import type { Facet } from '../../src/jig/mesh.ts';

/** What we use of the library: its own types name their files in a way that Node's rules refuse. */
interface Oracle {
  readonly setup: () => void;
  readonly Mesh: new (mesh: {
    readonly numProp: 3;
    readonly vertProperties: Float32Array;
    readonly triVerts: Uint32Array;
  }) => object;
  readonly Manifold: {
    readonly ofMesh: (mesh: object) => {
      readonly volume: () => number;
      readonly genus: () => number;
      readonly delete: () => void;
    };
  };
}

const load = Module as unknown as () => Promise<Oracle>;
let loaded: Promise<Oracle> | undefined;

/** An independent library's opinion on a closed skin: its status, and its volume in mm3. */
export async function manifoldOf(
  facets: readonly Facet[],
): Promise<{ status: string; volumeMm3: number; genus: number }> {
  loaded ??= load().then((library) => {
    library.setup();
    return library;
  });
  const { Manifold, Mesh } = await loaded;
  const index = new Map<string, number>();
  const places: number[] = [];
  const triangles: number[] = [];
  for (const facet of facets)
    for (let i = 1; i + 1 < facet.length; i++)
      for (const p of [facet[0]!, facet[i]!, facet[i + 1]!]) {
        const key = `${p.x + 0},${p.y + 0},${p.z + 0}`;
        if (!index.has(key)) {
          index.set(key, index.size);
          places.push(p.x, p.y, p.z);
        }
        triangles.push(index.get(key)!);
      }
  const mesh = new Mesh({
    numProp: 3,
    vertProperties: new Float32Array(places),
    triVerts: new Uint32Array(triangles),
  });
  try {
    const solid = Manifold.ofMesh(mesh);
    const answer = {
      status: 'closed',
      volumeMm3: solid.volume(),
      genus: solid.genus(),
    };
    solid.delete();
    return answer;
  } catch (error) {
    return { status: String(error), volumeMm3: NaN, genus: NaN };
  }
}

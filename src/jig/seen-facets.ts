import type { Corner3, Facet } from './mesh.ts';

/** A facet that faces the viewer, and which of its edges a draughtsman would draw. */
export interface SeenFacet {
  readonly corners: Facet;
  readonly normal: Corner3;
  /** For each corner: whether the edge from it to the next is drawn. */
  readonly drawn: readonly boolean[];
}

/**
 * The facets of a closed skin that face the viewer. An edge is drawn where the skin bends by more
 * than `bendRad`, or where it turns away from the viewer.
 */
export function seenFacets(
  facets: readonly Facet[],
  towardsViewer: Corner3,
  bendRad: number,
): readonly SeenFacet[] {
  const normals = facets.map(normalOf);
  const besides = new Map<string, number>();
  facets.forEach((facet, i) => {
    facet.forEach((a, k) => besides.set(edgeKey(a, facet[(k + 1) % facet.length]!), i));
  });
  return facets.flatMap((corners, i) => {
    const normal = normals[i]!;
    if (dot(normal, towardsViewer) <= 0) return [];
    const drawn = corners.map((a, k) => {
      const beyond = besides.get(edgeKey(corners[(k + 1) % corners.length]!, a));
      if (beyond === undefined) return true;
      const other = normals[beyond]!;
      // Where a hollow skin turns away, what turns away stands in front of the edge.
      return dot(other, towardsViewer) <= 0
        ? !risesAbove(facets[beyond]!, a, normal)
        : dot(normal, other) < Math.cos(bendRad);
    });
    return [{ corners, normal, drawn }];
  });
}

export const dot = (a: Corner3, b: Corner3): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** Whether a neighbouring facet bends up from the plane through `at`: the skin is hollow there. */
const risesAbove = (facet: Facet, at: Corner3, normal: Corner3): boolean => {
  const level = dot(normal, at);
  const offsets = facet.map((p) => dot(normal, p) - level);
  return Math.max(...offsets) > -Math.min(...offsets);
};

function normalOf(facet: Facet): Corner3 {
  // Newell's sum: sound for any flat polygon, whichever corner is first.
  let [x, y, z] = [0, 0, 0];
  facet.forEach((a, i) => {
    const b = facet[(i + 1) % facet.length]!;
    x += (a.y - b.y) * (a.z + b.z);
    y += (a.z - b.z) * (a.x + b.x);
    z += (a.x - b.x) * (a.y + b.y);
  });
  const length = Math.hypot(x, y, z);
  return { x: x / length, y: y / length, z: z / length };
}

const edgeKey = (a: Corner3, b: Corner3): string =>
  `${a.x + 0},${a.y + 0},${a.z + 0}|${b.x + 0},${b.y + 0},${b.z + 0}`;

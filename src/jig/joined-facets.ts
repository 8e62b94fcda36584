import type { Corner3 } from './mesh.ts';
import { dot, type SeenFacet } from './seen-facets.ts';

/**
 * Flat neighbours joined while they stay convex, so that a picture has fewer pieces. Edges that are
 * drawn are never joined across.
 */
export function joinedFacets(facets: readonly SeenFacet[]): readonly SeenFacet[] {
  const all: (SeenFacet | null)[] = [...facets];
  const owner = new Map<string, number>();
  const claim = (facet: SeenFacet, index: number): void => {
    facet.corners.forEach((a, k) => owner.set(key(a, at(facet, k + 1)), index));
  };
  facets.forEach(claim);
  for (let i = 0; i < all.length; i++)
    for (let k = 0; k < (all[i]?.corners.length ?? 0); k++) {
      const facet = all[i]!;
      const j = owner.get(key(at(facet, k + 1), at(facet, k)));
      const other = j === undefined || j === i ? null : all[j];
      if (j === undefined || other === null || other === undefined || facet.drawn[k]) continue;
      const joined = join(facet, k, other);
      if (joined === null) continue;
      all[i] = joined;
      all[j] = null;
      claim(joined, i);
      k = -1;
    }
  return all.filter((facet) => facet !== null);
}

/** Both facets as one, across the edge from corner k of the first; null when they must stay two. */
function join(a: SeenFacet, k: number, b: SeenFacet): SeenFacet | null {
  if (dot(a.normal, b.normal) < 1 - flatSlack) return null;
  const start = b.corners.findIndex((p) => same(p, at(a, k)));
  // A corner in a straight run may be gone from one of them since their edge was noted.
  if (start < 0 || !same(at(b, start + b.corners.length - 1), at(a, k + 1))) return null;
  // From the end of the shared edge round a, then round b, back to it.
  const round = [...turn(a, k + 1, a.corners.length - 1), ...turn(b, start, b.corners.length - 1)];
  const needed = round.filter((p, i) => {
    const before = round.at(i - 1)!;
    const after = round[(i + 1) % round.length]!;
    return before.drawn !== p.drawn || bend(before.at, p.at, after.at, a.normal) > flatSlack;
  });
  const convex = round.every(
    (p, i) =>
      bend(round.at(i - 1)!.at, p.at, round[(i + 1) % round.length]!.at, a.normal) > -flatSlack,
  );
  return convex
    ? { corners: needed.map((p) => p.at), normal: a.normal, drawn: needed.map((p) => p.drawn) }
    : null;
}

interface Turn {
  readonly at: Corner3;
  readonly drawn: boolean;
}

const turn = (facet: SeenFacet, from: number, count: number): readonly Turn[] =>
  Array.from({ length: count }, (_, i) => ({
    at: at(facet, from + i),
    drawn: facet.drawn[(from + i) % facet.corners.length]!,
  }));

/** Sine of the turn at q, positive to the left seen against the normal. */
function bend(p: Corner3, q: Corner3, r: Corner3, normal: Corner3): number {
  const [ux, uy, uz] = [q.x - p.x, q.y - p.y, q.z - p.z];
  const [vx, vy, vz] = [r.x - q.x, r.y - q.y, r.z - q.z];
  const cross = { x: uy * vz - uz * vy, y: uz * vx - ux * vz, z: ux * vy - uy * vx };
  return dot(cross, normal) / (Math.hypot(ux, uy, uz) * Math.hypot(vx, vy, vz));
}

/** A bend below this share of a right angle shows in no picture. */
const flatSlack = 1e-7;

const at = (facet: SeenFacet, k: number): Corner3 => facet.corners[k % facet.corners.length]!;
const same = (a: Corner3, b: Corner3): boolean => a.x === b.x && a.y === b.y && a.z === b.z;
const key = (a: Corner3, b: Corner3): string =>
  `${a.x + 0},${a.y + 0},${a.z + 0}|${b.x + 0},${b.y + 0},${b.z + 0}`;

import type { Corner3 } from './mesh.ts';
import { dot, type SeenFacet } from './seen-facets.ts';

/**
 * Facets that face the viewer, cut where they must be, in an order in which each may be painted over
 * those before it. Source: Fuchs, Kedem, Naylor, On visible surface generation by a priori tree
 * structures, 1980.
 */
export function backToFront(facets: readonly SeenFacet[]): readonly SeenFacet[] {
  const size = facets
    .flatMap((f) => f.corners)
    .reduce((most, p) => Math.max(most, Math.abs(p.x), Math.abs(p.y), Math.abs(p.z)), 0);
  // A corner is on a plane when it is off by rounding only: some thousand ulps of the size.
  return ordered(facets, 4096 * Number.EPSILON * size);
}

function ordered(facets: readonly SeenFacet[], slackMm: number): readonly SeenFacet[] {
  const chosen = divider(facets, slackMm);
  if (chosen === undefined) return facets;
  const behind: SeenFacet[] = [];
  const on: SeenFacet[] = [];
  const before: SeenFacet[] = [];
  for (const facet of facets) {
    const part = parted(facet, chosen, slackMm);
    behind.push(...part.behind);
    on.push(...part.on);
    before.push(...part.before);
  }
  // Every facet faces the viewer, so what lies behind its plane is also farther away.
  return [...ordered(behind, slackMm), ...on, ...ordered(before, slackMm)];
}

/** Of some facets, the one whose plane cuts the fewest others and halves them best. */
function divider(facets: readonly SeenFacet[], slackMm: number): SeenFacet | undefined {
  if (facets.length <= 1) return undefined;
  const step = Math.max(1, Math.floor(facets.length / 12));
  let best: { facet: SeenFacet; cost: number } | undefined;
  for (let i = 0; i < facets.length; i += step) {
    const facet = facets[i]!;
    const cost = costOf(facet, facets, slackMm);
    if (best === undefined || cost < best.cost) best = { facet, cost };
  }
  return best?.facet;
}

function costOf(plane: SeenFacet, facets: readonly SeenFacet[], slackMm: number): number {
  let [cuts, lean] = [0, 0];
  for (const facet of facets) {
    const offs = offsets(facet, plane);
    const above = offs.some((mm) => mm > slackMm);
    const below = offs.some((mm) => mm < -slackMm);
    if (above && below) cuts += 1;
    else lean += above ? 1 : below ? -1 : 0;
  }
  return 8 * cuts + Math.abs(lean);
}

interface Parted {
  readonly behind: readonly SeenFacet[];
  readonly on: readonly SeenFacet[];
  readonly before: readonly SeenFacet[];
}

function parted(facet: SeenFacet, plane: SeenFacet, slackMm: number): Parted {
  const offs = offsets(facet, plane);
  const above = offs.some((mm) => mm > slackMm);
  const below = offs.some((mm) => mm < -slackMm);
  if (!above && !below) return { behind: [], on: [facet], before: [] };
  if (!below) return { behind: [], on: [], before: [facet] };
  if (!above) return { behind: [facet], on: [], before: [] };
  return {
    behind: [kept(facet, offs, -1, slackMm)],
    on: [],
    before: [kept(facet, offs, 1, slackMm)],
  };
}

/** What of a convex facet lies on one side of a plane; the cut itself is no edge to draw. */
function kept(facet: SeenFacet, offs: readonly number[], side: 1 | -1, slackMm: number): SeenFacet {
  const corners: Corner3[] = [];
  const drawn: boolean[] = [];
  facet.corners.forEach((p, i) => {
    const next = (i + 1) % facet.corners.length;
    const [here, there] = [side * offs[i]!, side * offs[next]!];
    if (here >= -slackMm) {
      corners.push(p);
      // The edge that runs out of this side ends in the cut.
      drawn.push(facet.drawn[i]! && !(Math.abs(here) <= slackMm && there < -slackMm));
    }
    if ((here > slackMm && there < -slackMm) || (here < -slackMm && there > slackMm)) {
      corners.push(between(p, facet.corners[next]!, here / (here - there)));
      drawn.push(here < 0 && facet.drawn[i]!);
    }
  });
  return { corners, normal: facet.normal, drawn };
}

const offsets = (facet: SeenFacet, plane: SeenFacet): readonly number[] => {
  const level = dot(plane.normal, plane.corners[0]!);
  return facet.corners.map((p) => dot(plane.normal, p) - level);
};

const between = (a: Corner3, b: Corner3, share: number): Corner3 => ({
  x: a.x + share * (b.x - a.x),
  y: a.y + share * (b.y - a.y),
  z: a.z + share * (b.z - a.z),
});

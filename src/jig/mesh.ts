/** A flat polygon of a solid's skin, counter-clockwise seen from outside, mm. */
export type Facet = readonly Corner3[];

export interface Corner3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface MeshCheck {
  /** Directed edges without exactly one partner the other way: 0 for a closed, rightly wound skin. */
  readonly openEdgeCount: number;
  /** Positive when the facets look outwards. */
  readonly signedVolumeMm3: number;
}

/** Counts edges by their exact places, and adds up the volume. */
export function checkMesh(facets: readonly Facet[]): MeshCheck {
  const balance = new Map<string, number>();
  const seen = new Map<string, number>();
  for (const facet of facets)
    facet.forEach((a, i) => {
      const [from, to] = [key(a), key(facet[(i + 1) % facet.length]!)];
      const forward = from < to;
      const edge = forward ? `${from}|${to}` : `${to}|${from}`;
      balance.set(edge, (balance.get(edge) ?? 0) + (forward ? 1 : -1));
      seen.set(edge, (seen.get(edge) ?? 0) + 1);
    });
  const open = [...balance].filter(([edge, sum]) => sum !== 0 || seen.get(edge) !== 2);
  return { openEdgeCount: open.length, signedVolumeMm3: volumeMm3(facets) };
}

/** -0 and 0 are one place. */
const key = (p: Corner3): string => `${p.x + 0},${p.y + 0},${p.z + 0}`;

function volumeMm3(facets: readonly Facet[]): number {
  const about = facets[0]?.[0];
  if (about === undefined) return 0;
  let six = 0;
  for (const facet of facets)
    for (let i = 1; i + 1 < facet.length; i++)
      six += triple(less(facet[0]!, about), less(facet[i]!, about), less(facet[i + 1]!, about));
  return six / 6;
}

const less = (a: Corner3, b: Corner3): Corner3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });

const triple = (a: Corner3, b: Corner3, c: Corner3): number =>
  a.x * (b.y * c.z - b.z * c.y) + a.y * (b.z * c.x - b.x * c.z) + a.z * (b.x * c.y - b.y * c.x);

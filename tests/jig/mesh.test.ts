import { describe, expect, it } from 'vitest';
import { checkMesh, type Corner3, type Facet } from '../../src/jig/mesh.ts';

const at = (x: number, y: number, z: number): Corner3 => ({ x, y, z });
const [a, b, c, d] = [at(0, 0, 0), at(3, 0, 0), at(0, 4, 0), at(0, 0, 5)];
/** A corner tetrahedron: volume 3 x 4 x 5 / 6 = 10. */
const tetrahedron: readonly Facet[] = [
  [a, c, b],
  [a, b, d],
  [a, d, c],
  [b, c, d],
];

describe('counting edges', () => {
  it('finds a tetrahedron closed, and its volume 10', () => {
    expect(checkMesh(tetrahedron)).toEqual({ openEdgeCount: 0, signedVolumeMm3: 10 });
  });

  it('finds three open edges where a facet is missing or turned round', () => {
    expect(checkMesh(tetrahedron.slice(1)).openEdgeCount).toBe(3);
    const turned = [[a, b, c], ...tetrahedron.slice(1)];
    expect(checkMesh(turned).openEdgeCount).toBe(3);
  });

  it('finds a skin inside out by its volume alone', () => {
    const inside = tetrahedron.map((facet) => facet.toReversed());
    expect(checkMesh(inside)).toEqual({ openEdgeCount: 0, signedVolumeMm3: -10 });
  });

  it('does not accept an edge that four facets share', () => {
    const double = [...tetrahedron, ...tetrahedron];
    expect(checkMesh(double).openEdgeCount).toBe(6);
  });

  it('takes minus nought for nought', () => {
    const signed = tetrahedron.map((facet, i) =>
      i === 0 ? facet.map((p) => ({ ...p, z: -0 })) : facet,
    );
    expect(checkMesh(signed).openEdgeCount).toBe(0);
  });
});

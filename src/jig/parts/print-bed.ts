import type { Facet } from '../mesh.ts';

/** Beds of common small printers, and what is kept between parts, mm. Common practice, no source. */
const BED_MM = 220;
const BETWEEN_MM = 5;

/** Parts in rows beside each other on one bed, none over another, in their order. */
export function sideBySide<T extends { readonly facets: readonly Facet[] }>(
  parts: readonly T[],
): readonly T[] {
  let [x, y, deepest] = [0, 0, 0];
  return parts.map((part) => {
    const places = part.facets.flat();
    const least = (axis: 'x' | 'y'): number =>
      places.reduce((l, p) => Math.min(l, p[axis]), Infinity);
    const most = (axis: 'x' | 'y'): number =>
      places.reduce((m, p) => Math.max(m, p[axis]), -Infinity);
    const wide = most('x') - least('x');
    const deep = most('y') - least('y');
    if (x > 0 && x + wide > BED_MM) [x, y, deepest] = [0, y + deepest + BETWEEN_MM, 0];
    const by = { x: x - least('x'), y: y - least('y') };
    [x, deepest] = [x + wide + BETWEEN_MM, Math.max(deepest, deep)];
    return {
      ...part,
      facets: part.facets.map((facet) =>
        facet.map((p) => ({ x: p.x + by.x, y: p.y + by.y, z: p.z })),
      ),
    };
  });
}

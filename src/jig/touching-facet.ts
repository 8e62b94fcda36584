import type { Corner3, Facet } from './mesh.ts';
import type { StopPart } from './stop-part.ts';

/** Whether a facet of a part's solid is one of its upright faces that touch (or are milled to touch). */
export function touchesBlank(
  part: StopPart,
  { corners, normal }: { readonly corners: Facet; readonly normal: Corner3 },
): boolean {
  return part.lands.some(({ ends: [from, to] }) => {
    const [across, along] = from.x === to.x ? (['x', 'y'] as const) : (['y', 'x'] as const);
    const outwards = part.towardsBlank[across];
    const faceMm = from[across] + outwards * part.allowanceMm;
    const [low, high] = [Math.min(from[along], to[along]), Math.max(from[along], to[along])];
    return (
      Math.sign(normal[across]) === outwards &&
      corners.every((p) => p[across] === faceMm && p[along] >= low && p[along] <= high)
    );
  });
}

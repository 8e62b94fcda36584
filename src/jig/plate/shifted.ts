import { signedAreaMm2 } from '../../plane/measure.ts';
import type { Xy } from './drawing.ts';

type Loop = readonly Xy[];

/** Sides that are shorter would fall together on the grid of a solid, mm. */
const SHORTEST_MM = 0.01;

/** Every side moved inwards (outwards when negative), its direction kept; null where it is too fine for that. */
export function shifted(outline: Loop, byMm: number): Loop | null {
  const inward = outline.map((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const long = Math.hypot(q.x - p.x, q.y - p.y);
    return { x: -(q.y - p.y) / long, y: (q.x - p.x) / long };
  });
  const moved = outline.map((p, i) => {
    const [m, n] = [inward[(i + outline.length - 1) % outline.length]!, inward[i]!];
    const share = byMm / (1 + m.x * n.x + m.y * n.y);
    return { x: p.x + share * (m.x + n.x), y: p.y + share * (m.y + n.y) };
  });
  const isSound =
    signedAreaMm2(moved) > 0 &&
    moved.every((p, i) => {
      const k = (i + 1) % moved.length;
      const [a, b, q] = [outline[i]!, outline[k]!, moved[k]!];
      const side = Math.hypot(b.x - a.x, b.y - a.y);
      return (q.x - p.x) * (b.x - a.x) + (q.y - p.y) * (b.y - a.y) > SHORTEST_MM * side;
    });
  return isSound ? moved : null;
}

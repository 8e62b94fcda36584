import { unreachable } from '../num/invariant.ts';
import type { Path } from '../plane/path.ts';
import { placedPath, QUARTER_BULGE } from '../plane/path.ts';
import type { Feature, Shape } from './job.ts';

/** The outline that a feature draws on its face, nominal, in the blank, arcs exact, counter-clockwise. */
export const featurePath = ({ shape, turnedRad, at }: Feature): Path =>
  placedPath(shapePath(shape), turnedRad, at);

function shapePath(shape: Shape): Path {
  switch (shape.kind) {
    case 'circle':
      return [
        { at: { x: shape.diameterMm / 2, y: 0 }, bulge: 1 },
        { at: { x: -shape.diameterMm / 2, y: 0 }, bulge: 1 },
      ];
    case 'rectangle':
      return rounded(shape.widthMm / 2, shape.heightMm / 2, shape.cornerRadiusMm, QUARTER_BULGE);
    case 'slot':
      return rounded(shape.lengthMm / 2, shape.widthMm / 2, shape.widthMm / 2, QUARTER_BULGE);
    case 'polygon':
      return shape.vertices.map((at) => ({ at, bulge: 0 }));
    case 'outline':
      return shape.path;
    default:
      return unreachable(shape);
  }
}

/** An upright rectangle of these half sizes with round corners; a side without length is left out. */
function rounded(x: number, y: number, radiusMm: number, bulge: number): Path {
  const r = Math.min(radiusMm, x, y);
  const corners = [
    [x, y - r, x - r, y],
    [r - x, y, -x, y - r],
    [-x, r - y, r - x, -y],
    [x - r, -y, x, r - y],
  ] as const;
  if (r === 0) return corners.map(([cx, cy]) => ({ at: { x: cx, y: cy }, bulge: 0 }));
  return corners.flatMap(([fromX, fromY, toX, toY], index) => {
    const next = corners[(index + 1) % 4]!;
    const joins = next[0] === toX && next[1] === toY;
    const start = { at: { x: fromX, y: fromY }, bulge };
    return joins ? [start] : [start, { at: { x: toX, y: toY }, bulge: 0 }];
  });
}

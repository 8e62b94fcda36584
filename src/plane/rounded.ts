import { unreachable } from '../num/invariant.ts';
import type { Point } from './point.ts';

/**
 * A convex outline as the cutter makes it: a core polygon (one point, two, or more, counter-clockwise,
 * from the feature's own place), with a disc of `discMm` swept round it along with the machine's
 * axes, and the cutter, which stays round, outside (`cutterSign` 1, a pocket) or inside (-1, the part
 * left by an outside profile).
 */
export interface Rounded {
  readonly core: readonly Point<'blank'>[];
  readonly discMm: number;
  readonly cutterMm: number;
  readonly cutterSign: 1 | -1;
}

/** What a convex shape looks like before any cutter: a core with rounded corners. */
export type ConvexShape =
  | { readonly kind: 'circle'; readonly diameterMm: number }
  | {
      readonly kind: 'rectangle';
      readonly widthMm: number;
      readonly heightMm: number;
      readonly cornerRadiusMm: number;
    }
  | { readonly kind: 'slot'; readonly lengthMm: number; readonly widthMm: number };

/** Core and corner radius of a shape, turned counter-clockwise by an angle. */
export function coreOf(
  shape: ConvexShape,
  turnedRad: number,
): { readonly core: readonly Point<'blank'>[]; readonly radiusMm: number } {
  const [c, s] = [Math.cos(turnedRad), Math.sin(turnedRad)];
  const turned = (x: number, y: number): Point<'blank'> => ({ x: c * x - s * y, y: s * x + c * y });
  switch (shape.kind) {
    case 'circle':
      return { core: [{ x: 0, y: 0 }], radiusMm: shape.diameterMm / 2 };
    case 'slot': {
      const half = (shape.lengthMm - shape.widthMm) / 2;
      return { core: [turned(-half, 0), turned(half, 0)], radiusMm: shape.widthMm / 2 };
    }
    case 'rectangle': {
      const { cornerRadiusMm } = shape;
      const [w, h] = [shape.widthMm / 2 - cornerRadiusMm, shape.heightMm / 2 - cornerRadiusMm];
      return {
        core: [turned(-w, -h), turned(w, -h), turned(w, h), turned(-w, h)],
        radiusMm: cornerRadiusMm,
      };
    }
    default:
      return unreachable(shape);
  }
}

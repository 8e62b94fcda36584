import { unreachable } from '../../num/invariant.ts';
import type { Feature } from '../job.ts';

/** The rectangle around a feature's outline, blank frame, mm. */
export interface Extent {
  readonly x: readonly [low: number, high: number];
  readonly y: readonly [low: number, high: number];
}

export function extentOf({ shape, at, turnedRad }: Feature): Extent {
  const [c, s] = [Math.cos(turnedRad), Math.sin(turnedRad)];
  /** Around a centred straight core a by b (half sizes), rounded by r. */
  const around = (a: number, b: number, r: number): Extent => {
    const x = Math.abs(a * c) + Math.abs(b * s) + r;
    const y = Math.abs(a * s) + Math.abs(b * c) + r;
    return { x: [at.x - x, at.x + x], y: [at.y - y, at.y + y] };
  };
  switch (shape.kind) {
    case 'circle':
      return around(0, 0, shape.diameterMm / 2);
    case 'rectangle': {
      const r = shape.cornerRadiusMm;
      return around(shape.widthMm / 2 - r, shape.heightMm / 2 - r, r);
    }
    case 'slot':
      return around((shape.lengthMm - shape.widthMm) / 2, 0, shape.widthMm / 2);
    case 'polygon': {
      const xs = shape.vertices.map((vertex) => at.x + vertex.x * c - vertex.y * s);
      const ys = shape.vertices.map((vertex) => at.y + vertex.x * s + vertex.y * c);
      return { x: [Math.min(...xs), Math.max(...xs)], y: [Math.min(...ys), Math.max(...ys)] };
    }
    default:
      return unreachable(shape);
  }
}

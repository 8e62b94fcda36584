import { cosineOf, sineOf } from '../num/elementary.ts';
import type { Frame, Point } from './point.ts';
import type { Outline } from './outline.ts';

/** The outline moved by `by`; the frame may change with it. */
export function moved<To extends Frame>(
  outline: Outline<Frame>,
  by: { readonly x: number; readonly y: number },
): Outline<To> {
  return outline.map((p) => ({ x: p.x + by.x, y: p.y + by.y }));
}

/** The outline turned counter-clockwise about the origin. */
export function turned<F extends Frame>(outline: Outline<F>, turnRad: number): Outline<F> {
  if (turnRad === 0) return outline;
  const c = cosineOf(turnRad);
  const s = sineOf(turnRad);
  return outline.map((p) => ({ x: c * p.x - s * p.y, y: s * p.x + c * p.y }));
}

/** The outline seen through `map`, wound counter-clockwise again if `map` turned it round. */
export function mapped<From extends Frame, To extends Frame>(
  outline: Outline<From>,
  map: (p: Point<From>) => Point<To>,
  keepsWinding: boolean,
): Outline<To> {
  const places = outline.map(map);
  return keepsWinding ? places : places.reverse();
}

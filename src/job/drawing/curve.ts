import { hypotenuse } from '../../num/elementary.ts';
import type { Point } from '../../plane/point.ts';

/** How far a straight piece may be off the curve it stands for, mm. */
export const CURVE_MM = 0.001;
/** More pieces of one curve than any outline may have corners: then there are too many of them all. */
const MOST_PIECES = 6000;

/**
 * Places on a Bezier curve of three or four control places between its ends, so close that the chords
 * are off by at most `CURVE_MM`.
 * Source: a chord over a share 1/n of a curve is off by at most max|B''| / (8 n^2); B'' of a curve of
 * degree d lies within d (d - 1) times the second differences of its control places.
 */
export function placesOnCurve(control: readonly Point<'blank'>[]): readonly Point<'blank'>[] {
  const degree = control.length - 1;
  const bends = control.slice(2).map((c, i) => {
    const [a, b] = [control[i]!, control[i + 1]!];
    return hypotenuse(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y);
  });
  const bend = degree * (degree - 1) * Math.max(...bends);
  const count = Math.min(MOST_PIECES, Math.max(1, Math.ceil(Math.sqrt(bend / (8 * CURVE_MM)))));
  return Array.from({ length: count - 1 }, (_, i) => placeAt(control, (i + 1) / count));
}

/** By de Casteljau's repeated halving in the share `t`. */
function placeAt(control: readonly Point<'blank'>[], t: number): Point<'blank'> {
  if (control.length === 1) return control[0]!;
  const next = control.slice(1).map((b, i) => {
    const a = control[i]!;
    return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
  });
  return placeAt(next, t);
}

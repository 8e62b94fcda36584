import { dipBetween, FAN, FAN_X, FAN_Y } from './fan.ts';
import { dipBeside, dipInFan, eachSide, FAN_MISS } from './least-gap.ts';
import { reach, type Landed } from './support.ts';

/**
 * The largest, over all places of the line of `inner`, of the distance to the nearest place of
 * `outer`, mm; both convex, `inner` within. No place that faces some direction is further from
 * `outer` than the two reach apart there, so only directions where they are further apart than the best
 * place so far are looked at: along a straight side the distance has one hump, which is closed
 * in on; round corners it is looked at in a fan of directions, and closed in on beside each
 * that is still in question.
 */
export function greatestGap(outer: Landed, inner: Landed): number {
  const distance = distanceTo(outer);
  let most = -Infinity;
  const sides: { readonly ux: number; readonly uy: number; readonly apart: number }[] = [];
  eachSide(inner, (ux, uy) => {
    sides.push({ ux, uy, apart: reach(outer, ux, uy) - reach(inner, ux, uy) });
  });
  for (const { ux, uy, apart } of sides.sort((a, b) => b.apart - a.apart)) {
    if (apart <= most) break;
    const [from, to] = sideOf(inner, ux, uy);
    const along = (s: number): number =>
      -distance(from.x + s * (to.x - from.x), from.y + s * (to.y - from.y), most);
    most = Math.max(most, -dipBetween(along, 0, 1, ALONG));
  }
  const facing = (ux: number, uy: number): number => {
    const { x, y } = placeAt(inner, ux, uy);
    return distance(x, y, -Infinity);
  };
  const apart = Float64Array.from(
    { length: FAN },
    (_, k) => reach(outer, FAN_X[k]!, FAN_Y[k]!) - reach(inner, FAN_X[k]!, FAN_Y[k]!),
  );
  for (let k = 0; k < FAN; k++)
    if (apart[k]! > most) most = Math.max(most, facing(FAN_X[k]!, FAN_Y[k]!));
  for (let k = 0; k < FAN; k++)
    if (apart[k]! > most) most = Math.max(most, -dipBeside((ux, uy) => -facing(ux, uy), k, ROUND));
  return most;
}

/** Golden sections round a corner: they leave 1.2e-3 rad. */
const ROUND = 12;
/** Golden sections along a straight side: they leave 1/300 of it. */
const ALONG = 12;

/** `enough`: a distance that is surely no larger may be told as it is known so far, a little too large. */
type Distance = (px: number, py: number, enough: number) => number;

/** Distance from a place to the line of a convex outline, mm; negative outside it. */
function distanceTo(outer: Landed): Distance {
  const fan = Float64Array.from({ length: FAN }, (_, k) => reach(outer, FAN_X[k]!, FAN_Y[k]!));
  const sides: [number, number, number][] = [];
  eachSide(outer, (ux, uy) => {
    sides.push([ux, uy, reach(outer, ux, uy)]);
  });
  const acrossMm = Math.max(fan[0]! + fan[FAN / 2]!, fan[FAN / 4]! + fan[(3 * FAN) / 4]!);
  const values = new Float64Array(FAN);
  const isSmooth = outer.x.length === 1;
  return (px, py, enough) => {
    let least = Infinity;
    for (const [ux, uy, far] of sides) least = Math.min(least, far - px * ux - py * uy);
    let coarse = Infinity;
    for (let k = 0; k < FAN; k++) {
      const here = fan[k]! - px * FAN_X[k]! - py * FAN_Y[k]!;
      values[k] = here;
      if (here < coarse) coarse = here;
    }
    least = Math.min(least, coarse);
    if (least <= enough) return least;
    const worth = least + FAN_MISS * acrossMm;
    const far = (ux: number, uy: number): number => reach(outer, ux, uy) - px * ux - py * uy;
    for (let k = 0; k < FAN; k++) {
      const here = values[k]!;
      if (here > worth || here > values[(k + 1) % FAN]! || here > values[(k + FAN - 1) % FAN]!)
        continue;
      least = Math.min(least, dipInFan(far, k, values, isSmooth));
    }
    return least;
  };
}

/** The place of an outline that reaches furthest in a direction. */
function placeAt(outline: Landed, ux: number, uy: number): { x: number; y: number } {
  const { x, y, more } = outline;
  let at = 0;
  for (let k = 1; k < x.length; k++)
    if (x[k]! * ux + y[k]! * uy + more[k]! > x[at]! * ux + y[at]! * uy + more[at]!) at = k;
  return placeOf(outline, at, ux, uy);
}

/** Where the outline round one vertex faces a direction. */
function placeOf(
  { x, y, more, growX, growY, map, discMm, roundMm }: Landed,
  at: number,
  ux: number,
  uy: number,
): { x: number; y: number } {
  const wx = ux + map[0]! * ux + map[2]! * uy + growX;
  const wy = uy + map[1]! * ux + map[3]! * uy + growY;
  const length = Math.sqrt(wx * wx + wy * wy);
  const disc = discMm / length;
  const around = roundMm + more[at]! + disc * (growX * wx + growY * wy);
  return {
    x: x[at]! + disc * (wx + map[0]! * wx + map[1]! * wy) + around * ux,
    y: y[at]! + disc * (wy + map[2]! * wx + map[3]! * wy) + around * uy,
  };
}

/** Both ends of the straight side of an outline that is square to a direction. */
function sideOf(
  outline: Landed,
  ux: number,
  uy: number,
): readonly [{ x: number; y: number }, { x: number; y: number }] {
  const { x, y, more } = outline;
  let [one, other] = [-1, -1];
  let [most, second] = [-Infinity, -Infinity];
  for (let k = 0; k < x.length; k++) {
    const here = x[k]! * ux + y[k]! * uy + more[k]!;
    if (here > most) [other, second, one, most] = [one, most, k, here];
    else if (here > second) [other, second] = [k, here];
  }
  return [placeOf(outline, one, ux, uy), placeOf(outline, other, ux, uy)];
}

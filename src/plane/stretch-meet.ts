import { angleOf, cosineOf, hypotenuse, sineOf } from '../num/elementary.ts';
import type { Stretch } from './path.ts';
import type { Point } from './point.ts';

/** Places that two pieces share, where they cross or one ends on the other; none of a stretch they run along together. */
export function sharedPlaces(a: Stretch, b: Stretch, slackMm: number): readonly Point<'blank'>[] {
  return crossings(a, b).filter((p) => isOn(a, p, slackMm) && isOn(b, p, slackMm));
}

/** Where the whole lines and circles cross that the pieces are parts of. */
function crossings(a: Stretch, b: Stretch): readonly Point<'blank'>[] {
  if (a.kind === 'line' && b.kind === 'line') return lineAndLine(a, b);
  if (a.kind === 'line') return b.kind === 'arc' ? lineAndCircle(a, b) : [];
  return b.kind === 'line' ? lineAndCircle(b, a) : circleAndCircle(a, b);
}

type Line = Extract<Stretch, { readonly kind: 'line' }>;
type Arc = Extract<Stretch, { readonly kind: 'arc' }>;

function lineAndLine(a: Line, b: Line): readonly Point<'blank'>[] {
  const [dx, dy] = [a.to.x - a.from.x, a.to.y - a.from.y];
  const [ex, ey] = [b.to.x - b.from.x, b.to.y - b.from.y];
  const cross = dx * ey - dy * ex;
  if (Math.abs(cross) <= PARALLEL * hypotenuse(dx, dy) * hypotenuse(ex, ey)) return [];
  const share = ((b.from.x - a.from.x) * ey - (b.from.y - a.from.y) * ex) / cross;
  return [{ x: a.from.x + share * dx, y: a.from.y + share * dy }];
}

/** Sine below which two lines have no crossing worth the name: a shift by an ulp would move it by metres. */
const PARALLEL = 1e-12;

function lineAndCircle({ from, to }: Line, { centre, radiusMm }: Arc): readonly Point<'blank'>[] {
  const length = hypotenuse(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const along = (centre.x - from.x) * ux + (centre.y - from.y) * uy;
  const off = (centre.x - from.x) * uy - (centre.y - from.y) * ux;
  return halves(radiusMm * radiusMm - off * off, radiusMm).map((half) => ({
    x: from.x + (along + half) * ux,
    y: from.y + (along + half) * uy,
  }));
}

function circleAndCircle(a: Arc, b: Arc): readonly Point<'blank'>[] {
  const [dx, dy] = [b.centre.x - a.centre.x, b.centre.y - a.centre.y];
  const far = hypotenuse(dx, dy);
  if (far === 0) return [];
  const along = (far * far + a.radiusMm ** 2 - b.radiusMm ** 2) / (2 * far);
  const [ux, uy] = [dx / far, dy / far];
  return halves(a.radiusMm ** 2 - along * along, a.radiusMm).map((half) => ({
    x: a.centre.x + along * ux - half * uy,
    y: a.centre.y + along * uy + half * ux,
  }));
}

/** Both roots; a touch that rounding has just missed counts. */
function halves(inRoot: number, radiusMm: number): readonly number[] {
  if (inRoot < -TOUCH_SHARE * radiusMm * radiusMm) return [];
  const root = Math.sqrt(Math.max(0, inRoot));
  return root === 0 ? [0] : [root, -root];
}

const TOUCH_SHARE = 1e-14;

/** Share of the way along a piece at which a place lies that is on its line or circle. */
export function shareAlong(one: Stretch, p: Point<'blank'>): number {
  if (one.kind === 'line') {
    const [dx, dy] = [one.to.x - one.from.x, one.to.y - one.from.y];
    return ((p.x - one.from.x) * dx + (p.y - one.from.y) * dy) / (dx * dx + dy * dy);
  }
  const turn = angleOf(p.y - one.centre.y, p.x - one.centre.x) - one.startRad;
  const share = turn / one.sweepRad;
  // Of all turns the one nearest to the middle of the arc.
  const full = Math.abs((2 * Math.PI) / one.sweepRad);
  return share - full * Math.round((share - 0.5) / full);
}

function isOn(one: Stretch, p: Point<'blank'>, slackMm: number): boolean {
  const lengthMm =
    one.kind === 'line'
      ? hypotenuse(one.to.x - one.from.x, one.to.y - one.from.y)
      : one.radiusMm * Math.abs(one.sweepRad);
  const slack = slackMm / lengthMm;
  const share = shareAlong(one, p);
  return share >= -slack && share <= 1 + slack;
}

/** The part of a piece between two shares of its way. */
export function partOf(one: Stretch, from: number, to: number): Stretch {
  const [start, end] = [placeAt(one, from), placeAt(one, to)];
  if (one.kind === 'line') return { kind: 'line', from: start, to: end };
  return {
    ...one,
    from: start,
    to: end,
    startRad: one.startRad + from * one.sweepRad,
    sweepRad: (to - from) * one.sweepRad,
  };
}

/** The place at a share of the way along a piece; its ends as they are. */
export function placeAt(one: Stretch, share: number): Point<'blank'> {
  if (share === 0) return one.from;
  if (share === 1) return one.to;
  if (one.kind === 'line')
    return {
      x: one.from.x + share * (one.to.x - one.from.x),
      y: one.from.y + share * (one.to.y - one.from.y),
    };
  const turn = one.startRad + share * one.sweepRad;
  return {
    x: one.centre.x + one.radiusMm * cosineOf(turn),
    y: one.centre.y + one.radiusMm * sineOf(turn),
  };
}

/** Which way a piece runs at a share of its way, radians. */
export function headingAt(one: Stretch, share: number): number {
  if (one.kind === 'line') return angleOf(one.to.y - one.from.y, one.to.x - one.from.x);
  return one.startRad + share * one.sweepRad + (Math.sign(one.sweepRad) * Math.PI) / 2;
}

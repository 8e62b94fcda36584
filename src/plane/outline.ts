import { arcCosineOf, cosineOf, sineOf } from '../num/elementary.ts';
import type { Frame, Point } from './point.ts';

/** A closed outline, counter-clockwise, mm; the last vertex joins the first. */
export type Outline<F extends Frame> = readonly Point<F>[];

/** Chords for a full turn, a multiple of 4, so that none strays from the arc by more than `chordMm`. */
export function chordCount(radiusMm: number, chordMm: number): number {
  const halfRad = arcCosineOf(Math.max(0, 1 - chordMm / radiusMm));
  return Math.max(8, 4 * Math.ceil(Math.PI / halfRad / 4));
}

/** A circle round the origin; its vertices lie on it, so its chords run up to `chordMm` inside. */
export function circleOutline<F extends Frame>(radiusMm: number, chordMm: number): Outline<F> {
  const count = chordCount(radiusMm, chordMm);
  return Array.from({ length: count }, (_, i) => {
    const turn = (2 * Math.PI * i) / count;
    return { x: radiusMm * cosineOf(turn), y: radiusMm * sineOf(turn) };
  });
}

/** A rectangle about the origin with round corners (radius 0: sharp). */
export function rectangleOutline<F extends Frame>(
  widthMm: number,
  heightMm: number,
  cornerRadiusMm: number,
  chordMm: number,
): Outline<F> {
  const radius = Math.min(cornerRadiusMm, widthMm / 2, heightMm / 2);
  const x = widthMm / 2 - radius;
  const y = heightMm / 2 - radius;
  const quarters = [
    { x, y, from: 0 },
    { x: -x, y, from: 1 },
    { x: -x, y: -y, from: 2 },
    { x, y: -y, from: 3 },
  ];
  return withoutRepeats(
    quarters.flatMap(({ x: cx, y: cy, from }) => {
      const start = (from * Math.PI) / 2;
      return radius === 0
        ? [{ x: cx, y: cy }]
        : arc(cx, cy, radius, start, start + Math.PI / 2, chordMm);
    }),
  );
}

/** A slot along x about the origin; its length counts both round ends. */
export function slotOutline<F extends Frame>(
  lengthMm: number,
  widthMm: number,
  chordMm: number,
): Outline<F> {
  return rectangleOutline(Math.max(lengthMm, widthMm), widthMm, widthMm / 2, chordMm);
}

/** Places along an arc, both ends included; it runs clockwise when `toRad` is below `fromRad`. */
export function arc<F extends Frame>(
  x: number,
  y: number,
  radiusMm: number,
  fromRad: number,
  toRad: number,
  chordMm: number,
): Point<F>[] {
  const share = Math.abs(toRad - fromRad) / (2 * Math.PI);
  const count = Math.max(1, Math.ceil(share * chordCount(radiusMm, chordMm) - 1e-9));
  return Array.from({ length: count + 1 }, (_, i) => {
    const turn = fromRad + ((toRad - fromRad) * i) / count;
    return { x: x + radiusMm * cosineOf(turn), y: y + radiusMm * sineOf(turn) };
  });
}

function withoutRepeats<F extends Frame>(outline: Outline<F>): Outline<F> {
  return outline.filter((p, i) => {
    const before = outline.at(i - 1)!;
    // Round corners that meet half-way give the same place twice, up to a few ulps of its size.
    const ulpsMm = 8 * Number.EPSILON * (Math.abs(p.x) + Math.abs(p.y));
    return Math.abs(p.x - before.x) > ulpsMm || Math.abs(p.y - before.y) > ulpsMm;
  });
}

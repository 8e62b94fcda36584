import { chordCount } from '../../plane/outline.ts';
import type { Curve, CurveVertex, Xy } from './drawing.ts';

/** Bulge of a quarter turn. */
const QUARTER = Math.tan(Math.PI / 8);

/** A rectangle between two corners, its own corners round (0: sharp). */
export function roundedBox(low: Xy, high: Xy, radiusMm: number): Curve {
  const r = Math.min(radiusMm, (high.x - low.x) / 2, (high.y - low.y) / 2);
  if (r === 0)
    return [
      { x: low.x, y: low.y, bulge: 0 },
      { x: high.x, y: low.y, bulge: 0 },
      { x: high.x, y: high.y, bulge: 0 },
      { x: low.x, y: high.y, bulge: 0 },
    ];
  const at = (x: number, y: number, bulge: number): CurveVertex => ({ x, y, bulge });
  return withoutRepeats([
    at(low.x + r, low.y, 0),
    at(high.x - r, low.y, QUARTER),
    at(high.x, low.y + r, 0),
    at(high.x, high.y - r, QUARTER),
    at(high.x - r, high.y, 0),
    at(low.x + r, high.y, QUARTER),
    at(low.x, high.y - r, 0),
    at(low.x, low.y + r, QUARTER),
  ]);
}

/** A slot between the middles of its round ends. */
export function slotCurve(from: Xy, to: Xy, radiusMm: number): Curve {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const across = {
    x: (-(to.y - from.y) / length) * radiusMm,
    y: ((to.x - from.x) / length) * radiusMm,
  };
  return [
    { x: from.x - across.x, y: from.y - across.y, bulge: 0 },
    { x: to.x - across.x, y: to.y - across.y, bulge: 1 },
    { x: to.x + across.x, y: to.y + across.y, bulge: 0 },
    { x: from.x + across.x, y: from.y + across.y, bulge: 1 },
  ];
}

/** Straight between its corners. */
export const polygonCurve = (corners: readonly Xy[]): Curve =>
  corners.map(({ x, y }) => ({ x, y, bulge: 0 }));

/** Places along a closed curve, those of an arc on it, so that its chords run inside an outer curve. */
export function onCurve(curve: Curve, chordMm: number): readonly Xy[] {
  return curve.flatMap((from, i) => {
    const to = curve[(i + 1) % curve.length]!;
    if (from.bulge === 0) return [{ x: from.x, y: from.y }];
    const arc = arcOf(from, to);
    const count = stepsOf(arc, chordMm);
    return Array.from({ length: count }, (_, k) =>
      k === 0 ? { x: from.x, y: from.y } : arc.at(k / count),
    );
  });
}

/**
 * Places round a closed curve whose chords touch its arcs from outside, so that what just fills the
 * true hole goes through. Its arcs must run on smoothly from their neighbours, as those of slots do.
 */
export function roundCurve(curve: Curve, chordMm: number): readonly Xy[] {
  return curve.flatMap((from, i) => {
    const before = curve[(i + curve.length - 1) % curve.length]!;
    const to = curve[(i + 1) % curve.length]!;
    if (from.bulge === 0) return before.bulge === 0 ? [{ x: from.x, y: from.y }] : [];
    const arc = arcOf(from, to);
    const count = stepsOf(arc, chordMm);
    const out = 1 / Math.cos(Math.abs(arc.sweepRad) / count / 2);
    return Array.from({ length: count }, (_, k) => {
      const p = arc.at((k + 0.5) / count);
      return {
        x: arc.centre.x + (p.x - arc.centre.x) * out,
        y: arc.centre.y + (p.y - arc.centre.y) * out,
      };
    });
  });
}

/** The same round a whole circle. */
export function roundCircle(at: Xy, radiusMm: number, chordMm: number): readonly Xy[] {
  const count = chordCount(radiusMm, chordMm);
  const reach = radiusMm / Math.cos(Math.PI / count);
  return Array.from({ length: count }, (_, i) => {
    const turn = ((2 * i + 1) * Math.PI) / count;
    return { x: at.x + reach * Math.cos(turn), y: at.y + reach * Math.sin(turn) };
  });
}

interface Arc {
  readonly centre: Xy;
  readonly radiusMm: number;
  readonly sweepRad: number;
  readonly at: (share: number) => Xy;
}

/** The arc from a vertex with a bulge to the next. */
export function arcOf(from: CurveVertex, to: Xy): Arc {
  const { bulge } = from;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  // The centre is this share of the chord to its left, seen from its middle.
  const left = (1 - bulge * bulge) / (4 * bulge);
  const centre = { x: (from.x + to.x) / 2 - left * dy, y: (from.y + to.y) / 2 + left * dx };
  const radiusMm = (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const startRad = Math.atan2(from.y - centre.y, from.x - centre.x);
  const sweepRad = 4 * Math.atan(bulge);
  return {
    centre,
    radiusMm,
    sweepRad,
    at: (share) => {
      const turn = startRad + share * sweepRad;
      return { x: centre.x + radiusMm * Math.cos(turn), y: centre.y + radiusMm * Math.sin(turn) };
    },
  };
}

const stepsOf = ({ radiusMm, sweepRad }: Arc, chordMm: number): number =>
  Math.max(
    1,
    Math.ceil((chordCount(radiusMm, chordMm) * Math.abs(sweepRad)) / (2 * Math.PI) - 1e-9),
  );

function withoutRepeats(curve: Curve): Curve {
  return curve.filter((v, i) => {
    const next = curve[(i + 1) % curve.length]!;
    return v.x !== next.x || v.y !== next.y;
  });
}

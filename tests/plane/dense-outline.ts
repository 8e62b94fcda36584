// What a round cutter makes of a path, a second time and otherwise: the way of its axis and the outline that it cuts
// as dense rows of places, by the clipping library, and every distance by looking at all of them.
import { grown } from '../../src/plane/clip.ts';
import { isInside, toEdgeMm } from '../../src/plane/distance.ts';
import { signedAreaMm2 } from '../../src/plane/measure.ts';
import type { Outline } from '../../src/plane/outline.ts';
import type { Path } from '../../src/plane/path.ts';
import { flattened } from '../../src/plane/path-measure.ts';
import type { Point } from '../../src/plane/point.ts';

/** offX, offY, xx, xy, yx, yy. */
export type Off = readonly [number, number, number, number, number, number];

/** How far chords stray from arcs, mm. */
export const CHORD_MM = 5e-4;

export interface Cut {
  readonly path: Path;
  readonly side: 'within' | 'outside';
  readonly cutterMm: number;
}

/** The outlines that are cut when the axis goes through a map and the cutter is larger by `growsMm`. */
export function denseOutlines(
  { path, side, cutterMm }: Cut,
  off: Off,
  growsMm: number,
): readonly Outline<'blank'>[] {
  const sign = side === 'within' ? -1 : 1;
  const axes = grown([flattened(path, CHORD_MM)], sign * cutterMm, CHORD_MM);
  const [offX, offY, xx, xy, yx, yy] = off;
  // From outside nobody gets into a hollow that closes behind the cutter.
  const reached = side === 'within' ? axes : [largest(axes)];
  const landed = reached.map((axis) =>
    axis.map(({ x, y }) => ({ x: x + offX + xx * x + xy * y, y: y + offY + yx * x + yy * y })),
  );
  return grown(landed, -sign * (cutterMm + growsMm), CHORD_MM);
}

const largest = (outlines: readonly Outline<'blank'>[]): Outline<'blank'> =>
  outlines.reduce((most, one) => (signedAreaMm2(one) > signedAreaMm2(most) ? one : most));

/** Distances from places along the inner line to the outer, negative outside. */
export function denseGaps(
  outer: readonly Outline<'blank'>[],
  inner: readonly Outline<'blank'>[],
): { readonly least: number; readonly most: number } {
  const gap = (p: Point<'blank'>): number => {
    const away = toEdges(p, outer);
    return outer.some((one) => isInside(p, one)) ? away : -away;
  };
  return { least: -mostAlong(inner, (p) => -gap(p)), most: mostAlong(inner, gap) };
}

/** The largest distance from a place of either line to the other. */
export const denseStep = (
  one: readonly Outline<'blank'>[],
  other: readonly Outline<'blank'>[],
): number =>
  Math.max(
    mostAlong(one, (p) => toEdges(p, other)),
    mostAlong(other, (p) => toEdges(p, one)),
  );

const toEdges = (p: Point<'blank'>, outlines: readonly Outline<'blank'>[]): number =>
  Math.min(...outlines.map((one) => toEdgeMm(p, one)));

const STEP_MM = 0.2;
/** How sure the most along a line is, mm. */
export const SURE_MM = 2e-3;

/** The most of a function of place that changes by no more than one goes: at places, and between them wherever there can be more. */
function mostAlong(
  outlines: readonly Outline<'blank'>[],
  of: (p: Point<'blank'>) => number,
): number {
  const rows = outlines.map((one) => along(one, STEP_MM).map((p) => ({ p, value: of(p) })));
  let most = rows.flat().reduce((best, { value }) => Math.max(best, value), -Infinity);
  type Known = { readonly p: Point<'blank'>; readonly value: number };
  const look = (a: Known, b: Known): void => {
    const length = Math.hypot(a.p.x - b.p.x, a.p.y - b.p.y);
    if ((a.value + b.value + length) / 2 <= most + SURE_MM) return;
    const p = { x: (a.p.x + b.p.x) / 2, y: (a.p.y + b.p.y) / 2 };
    const middle = { p, value: of(p) };
    most = Math.max(most, middle.value);
    look(a, middle);
    look(middle, b);
  };
  for (const row of rows)
    row.forEach((one, k) => {
      look(one, row[(k + 1) % row.length]!);
    });
  return most;
}

/** The corners of an outline and places between them. */
export const along = (outline: Outline<'blank'>, stepMm: number): Point<'blank'>[] =>
  outline.flatMap((p, k) => placesBetween(p, outline[(k + 1) % outline.length]!, stepMm));

function placesBetween(p: Point<'blank'>, q: Point<'blank'>, stepMm: number): Point<'blank'>[] {
  const parts = Math.max(1, Math.ceil(Math.hypot(q.x - p.x, q.y - p.y) / stepMm));
  return Array.from({ length: parts }, (_, j) => ({
    x: p.x + ((q.x - p.x) * j) / parts,
    y: p.y + ((q.y - p.y) * j) / parts,
  }));
}

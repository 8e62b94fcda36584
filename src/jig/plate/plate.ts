import { unionOf } from '../../plane/clip.ts';
import { isInside, toSegmentMm } from '../../plane/distance.ts';
import { signedAreaMm2 } from '../../plane/measure.ts';
import { slotOutline } from '../../plane/outline.ts';
import { moved, turned } from '../../plane/move.ts';
import type { Outline } from '../../plane/outline.ts';
import { stopNumbers } from '../numbers.ts';
import { onCurve, roundCircle, roundCurve, slotCurve } from './curve.ts';
import type { Curve, Xy } from './drawing.ts';
import { strokesOf } from './lettering.ts';
import { shifted } from './shifted.ts';

/**
 * A flat part: an outline of one thickness with holes, pockets and engraved words from its top. The
 * profile is the truth: the solid and the drawing both follow from it.
 */
export interface Plate {
  readonly name: string;
  readonly thickMm: number;
  readonly outline: Curve;
  readonly holes: readonly PlateHole[];
  readonly words: readonly Lettering[];
  readonly windows?: readonly PlateWindow[];
}

/** An opening of any outline right through, its upper edge chamfered at 45 degrees by `leadMm` (0: sharp). */
export interface PlateWindow {
  /** Counter-clockwise. */
  readonly loop: readonly Xy[];
  readonly leadMm: number;
}

/** A round hole, or a slot when it has two ends, with a wider seat bored from the top or none. */
export interface PlateHole {
  readonly ends: readonly [Xy] | readonly [Xy, Xy];
  readonly radiusMm: number;
  /** From the top; null: through. */
  readonly depthMm: number | null;
  readonly seat: { readonly shape: SeatShape; readonly depthMm: number } | null;
}

export type SeatShape =
  | { readonly kind: 'round'; readonly radiusMm: number }
  /** Six-sided, for a captive nut: distance across its flats, corners towards +x. */
  | { readonly kind: 'hexagon'; readonly acrossFlatsMm: number };

/** Words cut into the top with strokes of `strokeMm`. */
export interface Lettering {
  readonly words: string;
  readonly at: Xy;
  /** `up`: turned by a quarter, counter-clockwise about `at`. */
  readonly runs?: 'right' | 'up';
  readonly heightMm: number;
  readonly strokeMm: number;
  readonly depthMm: number;
}

/** What is open at the top and where it ends: loops of plain places, counter-clockwise. */
export interface Sink {
  readonly loop: readonly Xy[];
  /** Left standing inside it, as high as the top. */
  readonly islands: readonly (readonly Xy[])[];
  /** From the top; null: through. */
  readonly depthMm: number | null;
  /** A narrower hole that goes on from its floor. */
  readonly within: Sink | null;
  /** A wider mouth at the top that narrows to the loop over `deepMm`, vertex over vertex. */
  readonly mouth?: { readonly loop: readonly Xy[]; readonly deepMm: number };
}

export const plateOutline = (plate: Plate): readonly Xy[] =>
  onCurve(plate.outline, stopNumbers.chordMm);

/** Every hole and stroke of a plate; those of words that overlap are one. */
export function sinksOf(plate: Plate): readonly Sink[] {
  return [
    ...plate.holes.map(holeSink),
    ...(plate.windows ?? []).map(windowSink),
    ...plate.words.flatMap(wordSinks),
  ];
}

function windowSink({ loop, leadMm }: PlateWindow): Sink {
  const own: Sink = { loop, islands: [], depthMm: null, within: null };
  const mouth = leadMm === 0 ? null : shifted(loop, -leadMm);
  return mouth === null ? own : { ...own, mouth: { loop: mouth, deepMm: leadMm } };
}

function holeSink(hole: PlateHole): Sink {
  const own: Sink = {
    loop: roundLoop(hole.ends, hole.radiusMm),
    islands: [],
    depthMm: hole.depthMm,
    within: null,
  };
  if (hole.seat === null) return own;
  const { shape, depthMm } = hole.seat;
  const loop =
    shape.kind === 'round'
      ? roundLoop(hole.ends, shape.radiusMm)
      : hexagon(hole.ends[0], shape.acrossFlatsMm);
  return { loop, islands: [], depthMm, within: own };
}

function roundLoop(ends: PlateHole['ends'], radiusMm: number): readonly Xy[] {
  const [from, to] = ends;
  return to === undefined
    ? roundCircle(from, radiusMm, stopNumbers.chordMm)
    : roundCurve(slotCurve(from, to, radiusMm), stopNumbers.chordMm);
}

/** Its flats are just so far apart. */
export function hexagon(at: Xy, acrossFlatsMm: number): readonly Xy[] {
  const reach = acrossFlatsMm / 2 / Math.cos(Math.PI / 6);
  return Array.from({ length: 6 }, (_, i) => ({
    x: at.x + reach * Math.cos((i * Math.PI) / 3),
    y: at.y + reach * Math.sin((i * Math.PI) / 3),
  }));
}

/** The strokes of some words, as what is cut out of the top. */
export function wordSinks(lettering: Lettering): readonly Sink[] {
  const strokes = strokesOf(lettering).flatMap((line) =>
    line.slice(1).map((to, i): Outline<'corner'> => {
      const from = line[i]!;
      const long = Math.hypot(to.x - from.x, to.y - from.y);
      const slot = slotOutline<'corner'>(
        long + lettering.strokeMm,
        lettering.strokeMm,
        stopNumbers.chordMm,
      );
      return moved(turned(slot, Math.atan2(to.y - from.y, to.x - from.x)), {
        x: (from.x + to.x) / 2,
        y: (from.y + to.y) / 2,
      });
    }),
  );
  const loops = unionOf(strokes)
    .map(withoutCrumbs)
    .map(withoutStraights)
    .filter((loop) => loop.length >= 3);
  const outer = loops.filter((loop) => signedAreaMm2(loop) > 0);
  const inner = loops.filter((loop) => signedAreaMm2(loop) < 0);
  return outer.map((loop) => ({
    loop,
    islands: inner
      .filter((island) => isInside(island[0]!, loop))
      .map((island) => aHairSmaller(island.toReversed())),
    depthMm: lettering.depthMm,
    within: null,
  }));
}

/** Where strokes cross, places come out so near each other that no cutter can tell them apart. */
const withoutCrumbs = (loop: Outline<'corner'>): Outline<'corner'> =>
  loop.filter((p, i) => {
    const before = loop[(i + loop.length - 1) % loop.length]!;
    return Math.hypot(p.x - before.x, p.y - before.y) > CRUMB_MM;
  });

const CRUMB_MM = 0.005;

/**
 * Sides of an island in one line with sides round it leave open edges where a floor is divided into
 * triangles (the modelling library joins them across the gap): so none is in line.
 */
function aHairSmaller(island: Outline<'corner'>): Outline<'corner'> {
  const middle = (axis: 'x' | 'y'): number =>
    island.reduce((sum, p) => sum + p[axis], 0) / island.length;
  const [x, y] = [middle('x'), middle('y')];
  return island.map((p) => ({ x: p.x + (x - p.x) * HAIR, y: p.y + (y - p.y) * HAIR }));
}

const HAIR = 0.01;

/** A place in the middle of a straight side: whoever divides a floor into triangles may leave it out. */
const withoutStraights = (loop: Outline<'corner'>): Outline<'corner'> =>
  loop.reduce<Outline<'corner'>>((kept, p, i) => {
    const before = kept.at(-1) ?? loop.at(-1)!;
    return toSegmentMm(p, before, loop[(i + 1) % loop.length]!) < STRAIGHT_MM ? kept : [...kept, p];
  }, []);

const STRAIGHT_MM = 1e-4;

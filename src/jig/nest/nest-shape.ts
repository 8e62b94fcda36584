import { featurePath } from '../../job/feature-path.ts';
import type { Job, Nest } from '../../job/job.ts';
import { limitsOf, meanOf } from '../../num/spread-of.ts';
import { grown } from '../../plane/clip.ts';
import { boundsOf, type Bounds } from '../../plane/measure.ts';
import type { Outline } from '../../plane/outline.ts';
import { stretchesOf, type Path, type Stretch } from '../../plane/path.ts';
import type { Point } from '../../plane/point.ts';
import { blankInLayout } from '../../setup/place.ts';
import type { Placing } from '../../setup/placing.ts';
import { partOf, pieceOf } from '../../sweep/piece.ts';

/** The recess as it is cut, nominally, in the layout of the placing in which it is first used. */
export interface NestShape {
  readonly outline: Outline<'layout'>;
  readonly box: Bounds;
  /** Wider than what lies in it on every side, mm. */
  readonly gapMm: number;
  /** Where the cutter's centre must go so that no inside corner holds the piece up. */
  readonly reliefs: readonly Point<'layout'>[];
}

/** How far beyond a corner of the piece its relief reaches, mm. Common practice, no source. */
const BEYOND_CORNER_MM = 0.5;
const CHORD_MM = 0.05;

export function nestShape(job: Job, nest: Nest, placing: Placing): NestShape {
  const piece = pieceOf(job, placing);
  const gapMm = gapOf(nest);
  const part = partOf(job);
  const path: Path = part === null ? blankPath(job) : featurePath(part);
  const outline =
    part === null ? widened(piece.box, gapMm) : (grown([piece.outline], gapMm, CHORD_MM)[0] ?? []);
  return {
    outline,
    box: boundsOf(outline),
    gapMm,
    reliefs: reliefsOf(path, nest.cutter.diameterMm / 2, gapMm).map((at) =>
      blankInLayout(job, placing.mirror, at),
    ),
  };
}

/** The middle of the gaps that were reckoned with, mm. */
function gapOf({ clearance }: Nest): number {
  const mean = meanOf(clearance.distribution);
  const [low, high] = limitsOf(clearance.distribution);
  return Math.max(0, Number.isFinite(mean) ? mean : (low + high) / 2);
}

function blankPath({ blank }: Job): Path {
  const { widthMm: w, heightMm: h } = blank;
  return [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ].map(([x, y]) => ({ at: { x: x!, y: y! }, bulge: 0 }));
}

function widened({ lowX, lowY, highX, highY }: Bounds, by: number): Outline<'layout'> {
  return [
    { x: lowX - by, y: lowY - by },
    { x: highX + by, y: lowY - by },
    { x: highX + by, y: highY + by },
    { x: lowX - by, y: highY + by },
  ];
}

/**
 * Centres of a cutter of this radius that clears each outside corner of a path which it cannot follow:
 * sharp ones, and arcs that are tighter than the cutter. Along the way out of the corner.
 */
function reliefsOf(path: Path, radiusMm: number, gapMm: number): Point<'blank'>[] {
  const stretches = stretchesOf(path);
  return stretches.flatMap((one, i) => {
    const before = stretches[(i + stretches.length - 1) % stretches.length]!;
    const corners = [sharp(before, one), tight(one, radiusMm - gapMm)];
    return corners
      .filter((corner) => corner !== null)
      .map(({ at, outRad }) => {
        const out = gapMm + BEYOND_CORNER_MM - radiusMm;
        return { x: at.x + Math.cos(outRad) * out, y: at.y + Math.sin(outRad) * out };
      });
  });
}

interface OutsideCorner {
  /** The outermost place. */
  readonly at: Point<'blank'>;
  readonly outRad: number;
}

/** Turns of less are the joints of smooth curves. */
const SMOOTH_RAD = 0.1;

function sharp(before: Stretch, after: Stretch): OutsideCorner | null {
  const [came, goes] = [directionAt(before, 'end'), directionAt(after, 'start')];
  const turn = Math.atan2(Math.sin(goes - came), Math.cos(goes - came));
  if (turn < SMOOTH_RAD) return null;
  // Counter-clockwise, so outwards is to the right of the way.
  return { at: after.from, outRad: came + turn / 2 - Math.PI / 2 };
}

function directionAt(one: Stretch, end: 'start' | 'end'): number {
  if (one.kind === 'line') return Math.atan2(one.to.y - one.from.y, one.to.x - one.from.x);
  const rad = end === 'start' ? one.startRad : one.startRad + one.sweepRad;
  return rad + (Math.sign(one.sweepRad) * Math.PI) / 2;
}

function tight(one: Stretch, leastMm: number): OutsideCorner | null {
  if (one.kind === 'line' || one.sweepRad <= 0 || one.radiusMm >= leastMm) return null;
  const outRad = one.startRad + one.sweepRad / 2;
  const { centre, radiusMm } = one;
  return {
    at: {
      x: centre.x + radiusMm * Math.cos(outRad),
      y: centre.y + radiusMm * Math.sin(outRad),
    },
    outRad,
  };
}

import type { StopsJob } from '../job/job.ts';
import { boundsOf } from '../plane/measure.ts';
import { figure } from './answer.ts';
import type { BoredHole } from './bored-hole.ts';
import { cornerInLayout } from './corner-frame.ts';
import type { PieceSize } from './layout-of-screws.ts';
import { stopNumbers } from './numbers.ts';
import { partNumbers } from './parts/numbers.ts';
import { isBar, type Piece } from './pieces.ts';
import { wordsLongMm } from './plate/lettering.ts';
import type { Lettering } from './plate/plate.ts';

/** Heights of letters that are tried, mm, and what is kept round them. Our own choice. */
const HEIGHTS_MM = [6, 5, 4];
const CLEAR_MM = 2;
/** Steps in which a free place is looked for, mm. */
const STEP_MM = 2;
/** A longer name is cut off. */
const MOST_LETTERS = 16;

/** A stretch of the top that is all body, in the piece's frame. */
interface Strip {
  readonly along: 'x' | 'y';
  readonly fromMm: number;
  readonly toMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/**
 * What is engraved on top of a stop, layout frame: which face is up, an arrow along an axis of the
 * machine, where the stop stands, the blank's thickness and the job; less where there is less room;
 * none where there is no room at all.
 */
export function stopLabel(
  job: StopsJob,
  piece: Piece,
  size: PieceSize,
  holes: readonly BoredHole[],
): readonly Lettering[] {
  const blocked = holes.map(({ at, radiusMm, seatRadiusMm, travelMm }) => ({
    at,
    radiusMm: Math.max(radiusMm, seatRadiusMm) + travelMm + CLEAR_MM,
  }));
  for (const tail of tailsOf(job, piece))
    for (const heightMm of HEIGHTS_MM)
      for (const strip of stripsOf(piece, size)) {
        const isAlongX = piece.frame.alongFence.axis === strip.along;
        const words = `UP ${isAlongX ? 'X' : 'Y'}>${tail}`;
        const place = freePlace(strip, wordsLongMm(words, heightMm), heightMm, blocked);
        if (place === null) continue;
        const box = boundsOf(place.map((p) => cornerInLayout(piece.frame, p)));
        const { strokeMm, engraveMm: depthMm } = partNumbers;
        return isAlongX
          ? [{ words, at: { x: box.lowX, y: box.lowY }, heightMm, strokeMm, depthMm }]
          : [
              {
                words,
                at: { x: box.highX, y: box.lowY },
                runs: 'up' as const,
                heightMm,
                strokeMm,
                depthMm,
              },
            ];
      }
  return [];
}

/** From the most that is said to the least. */
function tailsOf({ name, blank }: StopsJob, piece: Piece): readonly string[] {
  const where = piece.name
    .replace(/^.*, /, '')
    .split(' ')
    .map((word) => word[0]!.toUpperCase())
    .join('');
  const thick = `T${figure(blank.thickMm)}`;
  return [
    ` ${where} ${thick} ${name.slice(0, MOST_LETTERS)}`,
    ` ${where} ${thick}`,
    ` ${where}`,
    '',
  ];
}

/** The arms between their back and the line that no land or groove reaches behind. */
function stripsOf(piece: Piece, size: PieceSize): readonly Strip[] {
  const edgeMm = stopNumbers.outerRadiusMm + CLEAR_MM;
  const highMm = -Math.max(stopNumbers.betweenBackMm, piece.buttons?.diameterMm ?? 0) - CLEAR_MM;
  const notchMm = size.notchRadiusMm + CLEAR_MM;
  const arm = (along: 'x' | 'y', lengthMm: number, depthMm: number): Strip => ({
    along,
    fromMm: isBar(piece) ? edgeMm - size.sideDepthMm : notchMm,
    toMm: lengthMm - edgeMm,
    lowMm: edgeMm - depthMm,
    highMm,
  });
  return [
    arm('x', size.fenceArmMm, size.fenceDepthMm),
    ...(isBar(piece) ? [] : [arm('y', size.sideArmMm, size.sideDepthMm)]),
  ];
}

type At = BoredHole['at'];

/** Two opposite corners of the first free box of this size in a strip, or null. */
function freePlace(
  strip: Strip,
  longMm: number,
  highMm: number,
  blocked: readonly { readonly at: At; readonly radiusMm: number }[],
): readonly [At, At] | null {
  const place = (along: number, across: number): At =>
    strip.along === 'x' ? { x: along, y: across } : { x: across, y: along };
  for (let across = strip.lowMm; across + highMm <= strip.highMm; across += STEP_MM)
    for (let along = strip.fromMm; along + longMm <= strip.toMm; along += STEP_MM) {
      const [a, b] = [place(along, across), place(along + longMm, across + highMm)];
      if (blocked.every(({ at, radiusMm }) => toBoxMm(at, a, b) >= radiusMm)) return [a, b];
    }
  return null;
}

const toBoxMm = (p: At, low: At, high: At): number =>
  Math.hypot(Math.max(low.x - p.x, 0, p.x - high.x), Math.max(low.y - p.y, 0, p.y - high.y));

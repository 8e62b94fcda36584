import { cosineOf, hypotenuse, sineOf } from '../num/elementary.ts';
import { toStretchMm } from './path-distance.ts';
import { stretchesOf, type Path, type Stretch } from './path.ts';
import type { Point } from './point.ts';
import { headingAt, partOf, placeAt, shareAlong, sharedPlaces } from './stretch-meet.ts';

/** One piece of the way of a cutter's axis. */
export interface WayPiece {
  readonly way: Stretch;
  /** It goes round a corner of what it leaves, rather than along a wall. */
  readonly roundsCorner: boolean;
}

/** Places nearer to the path than the cutter's radius by less than this have it that near by rounding only, mm. */
const ROUNDING_MM = 1e-7;
/** Ends nearer than this are one place, mm. */
const JOINED_MM = 1e-5;
/** Joints that turn by less than this are smooth: 1e-5 mm at a cutter's width. */
const SMOOTH_RAD = 1e-6;

/**
 * The way of the axis of a round cutter that runs on the left of a closed path and cuts as far as it
 * can get: loops of lines and arcs, arcs exact; none when it fits in nowhere. Every piece of the path moved to
 * its left by the radius, and arcs round its corners that stick out to the left, are cut where they
 * cross, and what is nearer to the path than the radius falls out.
 */
export function cutterWay(path: Path, radiusMm: number): readonly (readonly WayPiece[])[] {
  const walls = stretchesOf(path);
  const raw = movedLeft(walls, radiusMm).map((piece) => ({ ...piece, box: boxOf(piece.way) }));
  const kept = raw
    .flatMap((piece) => splitBy(piece, raw))
    .filter(({ way }) => {
      const middle = placeAt(way, 0.5);
      return walls.every((wall) => toStretchMm(middle, wall) >= radiusMm - ROUNDING_MM);
    });
  return linked(kept);
}

function movedLeft(stretches: readonly Stretch[], radiusMm: number): readonly WayPiece[] {
  return stretches.flatMap((one, k) => {
    const next = stretches[(k + 1) % stretches.length]!;
    const moved = leftOf(one, radiusMm);
    const pieces: WayPiece[] = moved === null ? [] : [{ way: moved, roundsCorner: false }];
    const turn = turnBetween(headingAt(one, 1), headingAt(next, 0));
    if (turn >= -SMOOTH_RAD) return pieces;
    const startRad = headingAt(one, 1) + Math.PI / 2;
    return [...pieces, { way: arcOf(one.to, radiusMm, startRad, turn), roundsCorner: true }];
  });
}

/** A piece moved to its left; null of an arc that shrinks to nothing. */
function leftOf(one: Stretch, byMm: number): Stretch | null {
  if (one.kind === 'line') {
    const heading = headingAt(one, 0);
    const [x, y] = [-byMm * sineOf(heading), byMm * cosineOf(heading)];
    const shift = (p: Point<'blank'>): Point<'blank'> => ({ x: p.x + x, y: p.y + y });
    return { kind: 'line', from: shift(one.from), to: shift(one.to) };
  }
  const radiusMm = one.radiusMm - Math.sign(one.sweepRad) * byMm;
  if (radiusMm <= ROUNDING_MM) return null;
  return arcOf(one.centre, radiusMm, one.startRad, one.sweepRad);
}

function arcOf(
  centre: Point<'blank'>,
  radiusMm: number,
  startRad: number,
  sweepRad: number,
): Stretch {
  const at = (turn: number): Point<'blank'> => ({
    x: centre.x + radiusMm * cosineOf(turn),
    y: centre.y + radiusMm * sineOf(turn),
  });
  const [from, to] = [at(startRad), at(startRad + sweepRad)];
  return { kind: 'arc', from, to, centre, radiusMm, startRad, sweepRad };
}

/** From one heading to the next, counter-clockwise, above -pi and up to pi. */
export function turnBetween(fromRad: number, toRad: number): number {
  const turn = (toRad - fromRad) % (2 * Math.PI);
  return turn > Math.PI ? turn - 2 * Math.PI : turn <= -Math.PI ? turn + 2 * Math.PI : turn;
}

interface Boxed extends WayPiece {
  readonly box: Box;
}

interface Box {
  readonly lowX: number;
  readonly lowY: number;
  readonly highX: number;
  readonly highY: number;
}

/** A box round a piece; of an arc that round its whole circle. */
function boxOf(one: Stretch): Box {
  if (one.kind === 'arc') {
    const { centre, radiusMm } = one;
    return {
      lowX: centre.x - radiusMm,
      lowY: centre.y - radiusMm,
      highX: centre.x + radiusMm,
      highY: centre.y + radiusMm,
    };
  }
  return {
    lowX: Math.min(one.from.x, one.to.x),
    lowY: Math.min(one.from.y, one.to.y),
    highX: Math.max(one.from.x, one.to.x),
    highY: Math.max(one.from.y, one.to.y),
  };
}

const areApart = (a: Box, b: Box): boolean =>
  a.lowX > b.highX + JOINED_MM ||
  b.lowX > a.highX + JOINED_MM ||
  a.lowY > b.highY + JOINED_MM ||
  b.lowY > a.highY + JOINED_MM;

/** A piece in parts, cut where others cross it. */
function splitBy(piece: Boxed, all: readonly Boxed[]): readonly WayPiece[] {
  const { way, roundsCorner, box } = piece;
  const shares = all.flatMap((other) =>
    other === piece || areApart(box, other.box)
      ? []
      : sharedPlaces(way, other.way, ROUNDING_MM).map((p) => shareAlong(way, p)),
  );
  const apart = ROUNDING_MM / lengthOf(way);
  const cuts = [0];
  for (const share of shares.toSorted((a, b) => a - b))
    if (share > cuts.at(-1)! + apart && share < 1 - apart) cuts.push(share);
  return cuts.map((share, k) => ({ way: partOf(way, share, cuts[k + 1] ?? 1), roundsCorner }));
}

/**
 * Parts joined end to end into loops, the longest first, and the longest where several begin at one place: where two
 * pieces cross at a grazing angle, their ends beyond are too near to fall out. What closes no loop is left out.
 */
function linked(parts: readonly WayPiece[]): readonly (readonly WayPiece[])[] {
  const left = new Set(
    parts
      .map((part) => ({ part, lengthMm: lengthOf(part.way) }))
      .sort((a, b) => b.lengthMm - a.lengthMm)
      .map(({ part }) => part),
  );
  const loops: WayPiece[][] = [];
  for (const first of [...left]) {
    if (!left.delete(first)) continue;
    const loop = [first];
    for (;;) {
      const { to } = loop.at(-1)!.way;
      const isClosed = isSame(first.way.from, to);
      const onward = isClosed ? undefined : [...left].find(({ way }) => isSame(way.from, to));
      if (onward === undefined) break;
      loop.push(onward);
      left.delete(onward);
    }
    const lengthMm = loop.reduce((sum, { way }) => sum + lengthOf(way), 0);
    const isLoop = isSame(first.way.from, loop.at(-1)!.way.to);
    if (isLoop && lengthMm > LEAST_LOOP_MM) loops.push(loop);
  }
  return loops;
}

const LEAST_LOOP_MM = 10 * JOINED_MM;

const isSame = (a: Point<'blank'>, b: Point<'blank'>): boolean =>
  Math.abs(a.x - b.x) <= JOINED_MM && Math.abs(a.y - b.y) <= JOINED_MM;

const lengthOf = (one: Stretch): number =>
  one.kind === 'line'
    ? hypotenuse(one.to.x - one.from.x, one.to.y - one.from.y)
    : one.radiusMm * Math.abs(one.sweepRad);

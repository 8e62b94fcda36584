import { cubePoint } from './numbers.ts';

type XY = readonly [number, number];

/** A rigid motion of the layout: turned about its origin by the angle of that sine, then moved. */
export interface Motion {
  readonly sine: number;
  readonly x: number;
  readonly y: number;
}

export function movedBy({ sine, x, y }: Motion, [px, py]: XY): XY {
  const cosine = Math.sqrt(1 - sine * sine);
  return [cosine * px - sine * py + x, sine * px + cosine * py + y];
}

/** Where the machine, which does not move, then cuts, less where it should, as the moved thing sees it. */
export function missAt({ sine, x, y }: Motion, [px, py]: XY): XY {
  const cosine = Math.sqrt(1 - sine * sine);
  const [dx, dy] = [px - x, py - y];
  return [cosine * dx + sine * dy - px, cosine * dy - sine * dx - py];
}

/** By how much a motion is outside the set, mm; 0 or less within it. */
export type Beyond = (motion: Motion) => number;

/** A box round a set: half-widths of sine and of the place of `about` after the motion. */
export interface Box {
  readonly about: XY;
  readonly sine: number;
  readonly mm: number;
}

/** Motions spread evenly over the box, those kept that are in the set: exact but for their number. */
export function sampleOf(beyond: Beyond, box: Box, tries: number): readonly Motion[] {
  const kept: Motion[] = [];
  for (let index = 0; index < tries; index++) {
    const [u, v, w] = cubePoint(index);
    const sine = (2 * u - 1) * box.sine;
    const [ax, ay] = movedBy({ sine, x: 0, y: 0 }, box.about);
    const motion = {
      sine,
      x: box.about[0] - ax + (2 * v - 1) * box.mm,
      y: box.about[1] - ay + (2 * w - 1) * box.mm,
    };
    if (beyond(motion) <= 0) kept.push(motion);
  }
  return kept;
}

export interface Pair {
  readonly hole: XY;
  readonly pin: XY;
  /** Half the clearance. */
  readonly playMm: number;
}

/** Every hole must stay on its pin. */
export const onPins =
  (pairs: readonly Pair[]): Beyond =>
  (motion) =>
    Math.max(
      ...pairs.map(({ hole, pin, playMm }) => {
        const [x, y] = movedBy(motion, hole);
        return Math.hypot(x - pin[0], y - pin[1]) - playMm;
      }),
    );

/** A round or sharp corner of a convex part. */
export interface Rounded {
  readonly at: XY;
  readonly radiusMm: number;
}

/** A wall: nothing may be further along its unit normal than `reachMm`. */
export interface Wall {
  readonly normal: XY;
  readonly reachMm: number;
}

/** The whole part (what a rubber band round its corners encloses) within every wall. */
export const withinWalls =
  (part: readonly Rounded[], walls: readonly Wall[]): Beyond =>
  (motion) => {
    let most = -Infinity;
    const moved = part.map(({ at, radiusMm }) => [...movedBy(motion, at), radiusMm] as const);
    for (const { normal, reachMm } of walls)
      for (const [x, y, radiusMm] of moved)
        most = Math.max(most, normal[0] * x + normal[1] * y + radiusMm - reachMm);
    return most;
  };

/** Walls as far from the part as `gapMm`, with these normals (degrees). */
export function wallsRound(
  part: readonly Rounded[],
  gapMm: number,
  degrees: readonly number[],
): readonly Wall[] {
  return degrees.map((degree) => {
    const rad = (degree * Math.PI) / 180;
    const normal: XY = [Math.cos(rad), Math.sin(rad)];
    const reach = part.map(({ at, radiusMm }) => normal[0] * at[0] + normal[1] * at[1] + radiusMm);
    return { normal, reachMm: Math.max(...reach) + gapMm };
  });
}

/** The least that any motion of that turn is outside a set: it is convex in the move, so thirds close in on it. */
export function leastBeyond(beyond: Beyond, sine: number, { about, mm }: Box): number {
  const [ax, ay] = movedBy({ sine, x: 0, y: 0 }, about);
  const along = (x: number): number =>
    leastOf((y) => beyond({ sine, x: about[0] - ax + x, y: about[1] - ay + y }), mm);
  return leastOf(along, mm);
}

function leastOf(f: (at: number) => number, half: number): number {
  let [low, high] = [-2 * half, 2 * half];
  for (let step = 0; step < 40; step++) {
    const [one, other] = [(2 * low + high) / 3, (low + 2 * high) / 3];
    if (f(one) < f(other)) high = other;
    else low = one;
  }
  return f((low + high) / 2);
}

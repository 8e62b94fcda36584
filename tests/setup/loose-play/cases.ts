import type { Feature, Job, Shape } from '../../../src/job/job.ts';
import { inNest, onDowels } from '../loose-job.ts';
import type { Off } from '../misalign.ts';
import { FLAT6, PAPER } from '../plain-job.ts';
import {
  onPins,
  wallsRound,
  withinWalls,
  type Beyond,
  type Box,
  type Pair,
  type Rounded,
} from './true-sets.ts';

type XY = readonly [number, number];

/** A loose job whose front-up placing is true, and the set of back-up poses that it leaves, worked out here. */
export interface Loose {
  readonly job: Job;
  readonly off: Off;
  readonly beyond: Beyond;
  readonly box: Box;
  /** The line about which the blank is turned over. */
  readonly lineMm: number;
}

const W = 280;
const H = 180;

/**
 * Dowels drilled with the blank, turned about Y: hole k comes to the dowel at the mirrored place. What the drill was off,
 * in the layout, is in the dowel as it was and in the hole mirrored.
 */
export function dowelCase(
  at: readonly XY[],
  clearances: readonly number[],
  drilledOff: readonly XY[] = [],
): Loose {
  const xs = at.map(([x]) => x);
  const line = (Math.min(...xs) + Math.max(...xs)) / 2;
  const dowelOf = (k: number): number =>
    at.findIndex(
      ([x, y]) => Math.abs(x - (2 * line - at[k]![0])) < 1e-6 && Math.abs(y - at[k]![1]) < 1e-6,
    );
  const offOf = (k: number): XY => drilledOff[k] ?? [0, 0];
  const pairs = at.map(([, y], k): Pair => {
    const dowel = dowelOf(k);
    const [px, py] = at[dowel]!;
    const [ox, oy] = offOf(k);
    const [dx, dy] = offOf(dowel);
    return { hole: [px - ox, y + oy], pin: [px + dx, py + dy], playMm: clearances[k]! / 2 };
  });
  const off: Record<string, number> = {};
  clearances.forEach((clearance, k) => (off[`clearance/${k + 1}`] = clearance));
  drilledOff.forEach(([x, y], k) => {
    off[`repeatability/dowel ${k + 1}/x`] = x;
    off[`repeatability/dowel ${k + 1}/y`] = y;
  });
  const job = onDowels({ at: at.map(([x, y]) => ({ x, y })) });
  return { job, off, beyond: onPins(pairs), box: boxOf(pairs), lineMm: line };
}

/** Two holes at least are each within their play, so that the box round what two of them allow is large enough. */
function boxOf(pairs: readonly Pair[]): Box {
  let box: Box | null = null;
  for (const one of pairs)
    for (const other of pairs) {
      const length = Math.hypot(one.pin[0] - other.pin[0], one.pin[1] - other.pin[1]);
      if (length === 0) continue;
      const missed = Math.hypot(
        one.hole[0] - one.pin[0] - other.hole[0] + other.pin[0],
        one.hole[1] - one.pin[1] - other.hole[1] + other.pin[1],
      );
      const sine = (1.001 * (one.playMm + other.playMm + missed)) / length;
      const mm =
        1.001 * one.playMm + Math.hypot(one.hole[0] - one.pin[0], one.hole[1] - one.pin[1]);
      if (box === null || sine * mm * mm < box.sine * box.mm * box.mm)
        box = { about: one.pin, sine, mm };
    }
  return box!;
}

/** The whole blank, true, in a nest with a gap all round. */
export function blankCase(gapMm: number): Loose {
  const part = [
    [0, 0],
    [W, 0],
    [W, H],
    [0, H],
  ].map(([x, y]): Rounded => ({ at: [x!, y!], radiusMm: 0 }));
  return {
    job: inNest({}),
    off: { 'nest-clearance': gapMm },
    beyond: withinWalls(part, wallsRound(part, gapMm, [0, 90, 180, 270])),
    box: { about: [W / 2, H / 2], sine: (2.1 * gapMm) / H, mm: 1.01 * gapMm },
    lineMm: W / 2,
  };
}

/** Place of every outline, off the middle of the blank. */
const PLACE = { x: 110, y: 80 };

/** A part of that shape, cut free in the first placing, in a nest with a gap all round; seen from the back. */
function partCase(
  shape: Shape,
  seen: readonly Rounded[],
  degrees: readonly number[],
  gapMm: number,
  sine = gapMm / 15,
): Loose {
  const feature: Feature = {
    name: 'body',
    face: 'front',
    shape,
    at: PLACE,
    turnedRad: 0,
    cut: 'profile-outside',
    depthMm: 24,
    through: true,
    cutter: FLAT6,
  };
  const about: XY = [W - PLACE.x, PLACE.y];
  const part = seen.map(({ at, radiusMm }) => ({
    at: [about[0] + at[0], about[1] + at[1]] as const,
    radiusMm,
  }));
  return {
    job: {
      ...inNest({ around: 'body' }, { first: { kind: 'middle', at: null, tool: PAPER } }),
      features: [feature],
    },
    off: { 'nest-clearance': gapMm },
    beyond: withinWalls(part, wallsRound(part, gapMm, degrees)),
    box: { about, sine, mm: 2 * gapMm },
    lineMm: W / 2,
  };
}

const every = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index);

const EVERY_TWO = every(0, 179).map((index) => 2 * index);

/** 160 by 90 with corners of radius 12. */
export const roundedCase = (gapMm: number): Loose =>
  partCase(
    { kind: 'rectangle', widthMm: 160, heightMm: 90, cornerRadiusMm: 12 },
    [-1, 1].flatMap((x) => [-1, 1].map((y): Rounded => ({ at: [68 * x, 33 * y], radiusMm: 12 }))),
    EVERY_TWO,
    gapMm,
    gapMm / 60,
  );

/** A slot 150 by 60: half rounds at both ends. */
export const slotCase = (gapMm: number): Loose =>
  partCase(
    { kind: 'slot', lengthMm: 150, widthMm: 60 },
    [
      { at: [-45, 0], radiusMm: 30 },
      { at: [45, 0], radiusMm: 30 },
    ],
    EVERY_TWO,
    gapMm,
    gapMm / 40,
  );

/** Five corners, no two sides alike; the nest's corners are relieved. */
const CORNERS = [
  [-70, -45],
  [60, -50],
  [85, 10],
  [20, 55],
  [-75, 30],
] as const;

export function polygonCase(gapMm: number): Loose {
  const seen = CORNERS.map(([x, y]): Rounded => ({ at: [-x, y], radiusMm: 0 }));
  const degrees = CORNERS.map(([x, y], k) => {
    const [nextX, nextY] = CORNERS[(k + 1) % CORNERS.length]!;
    // Outwards of a counter-clockwise side, then mirrored.
    return (Math.atan2(x - nextX, -(nextY - y)) * 180) / Math.PI;
  });
  const vertices = CORNERS.map(([x, y]) => ({ x, y }));
  return partCase({ kind: 'polygon', vertices }, seen, degrees, gapMm);
}

/** Every 4 degrees: what is between stands out 0.04 mm at most, and the nest's wall as much. */
const HALF_ROUND = every(0, 45).map((index) => 4 * index);

/** A half round of radius 60 on a straight base. */
export const halfRoundCase = (gapMm: number): Loose =>
  partCase(
    {
      kind: 'outline',
      path: [
        { at: { x: -60, y: 0 }, bulge: 0 },
        { at: { x: 60, y: 0 }, bulge: 1 },
      ],
    },
    HALF_ROUND.map((degree): Rounded => {
      const rad = (degree * Math.PI) / 180;
      return { at: [60 * Math.cos(rad), 60 * Math.sin(rad)], radiusMm: 0 };
    }),
    [...HALF_ROUND, 270],
    gapMm,
  );

const LINE = [
  [140, 20],
  [140, 165],
] as const;
const PAIR = [
  [27, 70],
  [227, 70],
] as const;
const THREE = [
  [127, 160],
  [40, 30],
  [214, 30],
] as const;
const FOUR = [
  [30, 20],
  [250, 20],
  [30, 150],
  [250, 150],
] as const;

export const CASES: Readonly<Record<string, () => Loose>> = {
  'two dowels': () => dowelCase(LINE, [0.1, 0.1]),
  'two dowels, one looser': () => dowelCase(LINE, [0.05, 0.3]),
  'two dowels drilled off': () =>
    dowelCase(
      PAIR,
      [0.3, 0.2],
      [
        [0, 0],
        [0.09, 0.04],
      ],
    ),
  'a pair, one tight': () => dowelCase(PAIR, [0.1, 0.01]),
  'three dowels, none alike': () => dowelCase(THREE, [0.1, 0.2, 0.15]),
  'three dowels whose best fit is outside the set': () =>
    dowelCase(THREE, [1, 0.1, 0.1], [[0.2, 0]]),
  'four dowels, none alike': () => dowelCase(FOUR, [0.1, 0.2, 0.15, 0.3]),
  'four dowels whose best fit is outside the set': () =>
    dowelCase(
      FOUR,
      [0.1, 0.1, 1, 1],
      [
        [0, 0],
        [0, 0],
        [0.2, 0.1],
      ],
    ),
  'the blank in a nest': () => blankCase(0.2),
  'a rounded rectangle in a nest': () => roundedCase(0.2),
  'a slot in a nest': () => slotCase(0.2),
  'a polygon in a nest': () => polygonCase(0.2),
  'a half round in a nest': () => halfRoundCase(0.2),
};

import { describe, expect, it } from 'vitest';
import { greatestGap } from '../../src/plane/greatest-gap.ts';
import { leastGap } from '../../src/plane/least-gap.ts';
import { newLanded, type Landed } from '../../src/plane/support.ts';

// The least and the greatest lip a second time: both lines as dense rows of places, every pair measured.

/** Numbers in [0, 1) from a seed (Park and Miller's minimal standard). */
function randoms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

interface Wish {
  readonly corners: readonly (readonly [number, number])[];
  readonly discMm: number;
  readonly roundMm: number;
}

function landedOf({ corners, discMm, roundMm }: Wish, next: () => number): Landed {
  const landed = newLanded(corners.length);
  const off = (size: number): number => size * (2 * next() - 1);
  const [dx, dy, xx, xy, yx, yy] = [off(1), off(1), off(0.01), off(0.02), off(0.02), off(0.01)];
  corners.forEach(([x, y], k) => {
    landed.x[k] = x + dx + xx * x + xy * y;
    landed.y[k] = y + dy + yx * x + yy * y;
  });
  landed.map.set([xx, xy, yx, yy]);
  landed.discMm = discMm;
  landed.roundMm = roundMm;
  return landed;
}

/** Places along the line of an outline: round each vertex where it is the one that faces outwards, and along the sides. */
function placesOf({ x, y, map, discMm, roundMm }: Landed, count: number): [number, number][] {
  const places: [number, number][] = [];
  for (let k = 0; k < count; k++) {
    const turn = (2 * Math.PI * k) / count;
    const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
    const far = Array.from(x, (_, j) => x[j]! * ux + y[j]! * uy);
    const at = far.indexOf(Math.max(...far));
    const wx = ux + map[0]! * ux + map[2]! * uy;
    const wy = uy + map[1]! * ux + map[3]! * uy;
    const length = Math.hypot(wx, wy);
    const [cx, cy] = [(discMm * wx) / length, (discMm * wy) / length];
    places.push([
      x[at]! + cx + map[0]! * cx + map[1]! * cy + roundMm * ux,
      y[at]! + cy + map[2]! * cx + map[3]! * cy + roundMm * uy,
    ]);
  }
  return places.flatMap((p, k) => {
    const q = places[(k + 1) % count]!;
    const parts = Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / STEP_MM));
    return Array.from({ length: parts }, (_, j): [number, number] => [
      p[0] + ((q[0] - p[0]) * j) / parts,
      p[1] + ((q[1] - p[1]) * j) / parts,
    ]);
  });
}

const STEP_MM = 0.1;
const rectangle = (w: number, h: number): Wish['corners'] => [
  [-w, -h],
  [w, -h],
  [w, h],
  [-w, h],
];
const PAIRS: readonly (readonly [string, Wish, Wish])[] = [
  [
    'a ring',
    { corners: [[0, 0]], discMm: 27, roundMm: 3 },
    { corners: [[0, 0]], discMm: 17, roundMm: 3 },
  ],
  [
    'a rectangle in a circle',
    { corners: [[0, 0]], discMm: 27, roundMm: 3 },
    { corners: rectangle(12, 9), discMm: 0, roundMm: 3 },
  ],
  [
    'a circle in a rectangle',
    { corners: rectangle(20, 16), discMm: 2, roundMm: 3 },
    { corners: [[0, 0]], discMm: 9, roundMm: 3 },
  ],
  [
    'a rectangle in a rectangle',
    { corners: rectangle(20, 16), discMm: 2, roundMm: 3 },
    { corners: rectangle(12, 9), discMm: 0, roundMm: 3 },
  ],
  [
    'a slot in a slot',
    {
      corners: [
        [-12, 0],
        [12, 0],
      ],
      discMm: 9,
      roundMm: 3,
    },
    {
      corners: [
        [-10, 0],
        [10, 0],
      ],
      discMm: 2,
      roundMm: 3,
    },
  ],
  [
    'an octagon in a rectangle',
    { corners: rectangle(20, 16), discMm: 0, roundMm: 3 },
    {
      corners: Array.from(
        { length: 8 },
        (_, k) => [8 * Math.cos((k * Math.PI) / 4), 8 * Math.sin((k * Math.PI) / 4)] as const,
      ),
      discMm: 0,
      roundMm: 3,
    },
  ],
];

describe('the least and the greatest gap', () => {
  it.each(PAIRS)('of %s, each landed somehow, are those of dense places', (_name, outer, inner) => {
    const next = randoms(7);
    for (let run = 0; run < 5; run++) {
      const [a, b] = [landedOf(outer, next), landedOf(inner, next)];
      const far = placesOf(a, 720);
      const each = placesOf(b, 720).map(([px, py]) =>
        far.reduce((least, [qx, qy]) => Math.min(least, Math.hypot(px - qx, py - qy)), Infinity),
      );
      const [least, most] = [Math.min(...each), Math.max(...each)];
      // Places up to STEP apart on a line at distance d stand off by STEP squared over 8 d, and corners by their slope times STEP.
      expect(Math.abs(leastGap(a, b) - least)).toBeLessThan(0.002);
      expect(Math.abs(greatestGap(a, b) - most)).toBeLessThan(0.05);
      expect(greatestGap(a, b)).toBeGreaterThan(most - 0.005);
    }
  });
});

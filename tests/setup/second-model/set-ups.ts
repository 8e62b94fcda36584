import fc from 'fast-check';
import type { Corner, Edge, StopsJob, Made, Touch, Zero, ZeroXy } from '../../../src/job/job.ts';
import { FLAT6, NONE, PAPER, plainJob } from '../plain-job.ts';
import type { XY } from './vectors.ts';

/** A random set-up, how far off things are in it, and the luck that says what. */
export interface SetUp {
  readonly job: StopsJob;
  readonly seed: number;
  readonly size: 'realistic' | 'exaggerated';
  readonly at: XY;
}

interface Rough {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thickMm: number;
  readonly corner: Corner;
  readonly fenceAlongX: boolean;
  readonly opposite: boolean;
  readonly turnShare: boolean;
  readonly backFirst: boolean;
  readonly made: Made['kind'];
  readonly narrow: boolean;
  readonly fence: RoughTouch;
  readonly side: RoughTouch;
  readonly zeroes: readonly [RoughZero, RoughZero];
  readonly shares: readonly [number, number, number];
}

interface RoughTouch {
  readonly kind: Touch['kind'];
  readonly shares: readonly [number, number];
  /** The second contact is nearly the mirror image of the first. */
  readonly mirrored: number | null;
  readonly swapped: boolean;
}

interface RoughZero {
  readonly kind: ZeroXy['kind'];
  readonly at: readonly [number, number] | null;
}

const share = fc.integer({ min: 0, max: 40 }).map((count) => count / 40);

const roughTouch: fc.Arbitrary<RoughTouch> = fc.record({
  kind: fc.constantFrom('buttons', 'arm'),
  shares: fc.tuple(share, share),
  mirrored: fc.option(fc.integer({ min: -7, max: 7 })),
  swapped: fc.boolean(),
});

const roughZero: fc.Arbitrary<RoughZero> = fc.record({
  kind: fc.constantFrom('stops', 'edges', 'middle', 'milled-stops', 'kept'),
  at: fc.option(fc.tuple(share, share)),
});

const rough: fc.Arbitrary<Rough> = fc.record({
  widthMm: fc.integer({ min: 120, max: 400 }),
  heightMm: fc.integer({ min: 100, max: 300 }),
  thickMm: fc.integer({ min: 12, max: 40 }),
  corner: fc.constantFrom('near-left', 'near-right', 'far-left', 'far-right'),
  fenceAlongX: fc.boolean(),
  opposite: fc.boolean(),
  turnShare: fc.boolean(),
  backFirst: fc.boolean(),
  made: fc.constantFrom('set-by-hand', 'on-bed-pins', 'milled-in-place'),
  narrow: fc.boolean(),
  fence: roughTouch,
  side: roughTouch,
  zeroes: fc.tuple(roughZero, roughZero),
  shares: fc.tuple(share, share, share),
});

export const setUp: fc.Arbitrary<SetUp> = fc
  .record({
    rough,
    seed: fc.integer({ min: 1, max: 1e9 }),
    size: fc.constantFrom('realistic', 'exaggerated'),
    x: share,
    y: share,
  })
  .map(({ rough: r, seed, size, x, y }) => ({
    job: jobOf(r),
    seed,
    size,
    at: { x: x * r.widthMm, y: y * r.heightMm },
  }));

function jobOf(r: Rough): StopsJob {
  const plain = plainJob();
  const [nearFar, leftRight] = r.corner.split('-') as ['near' | 'far', 'left' | 'right'];
  const fence: Edge = r.fenceAlongX ? (nearFar === 'near' ? 'lower' : 'upper') : leftRight;
  const [fenceMm, sideMm] = r.fenceAlongX ? [r.widthMm, r.heightMm] : [r.heightMm, r.widthMm];
  // An opposite corner lies along the turned direction.
  const aboutY = r.opposite ? r.fenceAlongX : r.turnShare;
  const made: Made =
    r.made === 'milled-in-place'
      ? { kind: r.made, cutter: FLAT6 }
      : { kind: r.made, angle: NONE, square: NONE, spacing: NONE };
  const [first, second] = r.zeroes;
  const one = zeroOf(r, first.kind === 'kept' ? { ...first, kind: 'stops' } : first);
  const two = zeroOf(r, second);
  return {
    ...plain,
    blank: {
      ...plain.blank,
      widthMm: r.widthMm,
      heightMm: r.heightMm,
      thickMm: r.thickMm,
      widthAtYMm: r.shares[0] * r.heightMm,
      heightAtXMm: r.shares[1] * r.widthMm,
    },
    first: r.backFirst ? 'back' : 'front',
    turn: aboutY ? 'about-y' : 'about-x',
    stops: {
      ...plain.stops,
      corner: {
        frontUp: r.corner,
        backUp: r.opposite ? otherEnd(nearFar, leftRight, r.fenceAlongX) : r.corner,
      },
      fence,
      fenceTouch: touchOf(r.fence, fenceMm, 2),
      sideTouch: touchOf(r.side, sideMm, 1),
      band: r.narrow
        ? { kind: 'narrow', touchHeightMm: 0.8 * r.shares[2] * r.thickMm }
        : { kind: 'plain', heightMm: 0.8 * r.shares[2] * r.thickMm },
      made,
    },
    zero: r.backFirst ? { frontUp: two, backUp: one } : { frontUp: one, backUp: two },
  };
}

function otherEnd(nearFar: 'near' | 'far', leftRight: 'left' | 'right', alongX: boolean): Corner {
  if (alongX) return `${nearFar}-${leftRight === 'left' ? 'right' : 'left'}`;
  return `${nearFar === 'near' ? 'far' : 'near'}-${leftRight}`;
}

/** Contacts in the first and the last third of the edge, ends included. */
function touchOf(r: RoughTouch, lengthMm: number, buttons: 1 | 2): Touch {
  if (r.kind === 'buttons' && buttons === 1)
    return { kind: 'buttons', atMm: [r.shares[0] * lengthMm] };
  const fromMm = (r.shares[0] * lengthMm) / 3;
  const image = Math.min(lengthMm, lengthMm - fromMm + (r.mirrored ?? 0));
  const toMm = r.mirrored === null ? lengthMm - (r.shares[1] * lengthMm) / 3 : image;
  if (r.kind === 'arm') return { kind: 'arm', fromMm, toMm };
  return { kind: 'buttons', atMm: r.swapped ? [toMm, fromMm] : [fromMm, toMm] };
}

/** Stops that are not milled have no milled zero: those are touched on the stops. */
function zeroOf(r: Rough, { kind, at }: RoughZero): Zero {
  const place = at === null ? null : { x: at[0] * r.widthMm, y: at[1] * r.heightMm };
  const z: Zero['z'] = { on: 'top', at: null, tool: PAPER };
  switch (kind) {
    case 'kept': {
      const xy: ZeroXy = { kind, how: 're-homed', extra: NONE };
      return { xy, z };
    }
    case 'dowels':
    case 'nest':
    case 'hole':
      throw new Error('only stops in these set-ups');
    case 'milled-stops':
      return r.made === 'milled-in-place'
        ? { xy: { kind, at: place }, z }
        : { xy: { kind: 'stops', at: place, tool: PAPER }, z };
    case 'stops':
    case 'edges':
    case 'middle':
      return { xy: { kind, at: place, tool: PAPER }, z };
  }
}

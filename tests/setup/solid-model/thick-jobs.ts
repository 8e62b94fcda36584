import fc from 'fast-check';
import type { Cutter, Feature, StopsJob, Need, ZeroZ } from '../../../src/job/job.ts';
import { FLAT6, NONE, PAPER, plainJob } from '../plain-job.ts';

/** A random job of which only heights matter, and the luck that says what is off. */
export interface ThickJob {
  readonly job: StopsJob;
  readonly seed: number;
}

const FLAT3: Cutter = { ...FLAT6, name: 'flat 3', diameterMm: 3 };
const VEE: Cutter = {
  ...FLAT6,
  name: 'vee 60',
  kind: 'vee',
  vee: { includedRad: Math.PI / 3, tipFlatMm: NONE },
};
const LIMITS = { lowMm: 1, highMm: null };
const [W, H, T] = [280, 180, 24];

const placeOn = fc.record({ x: fc.integer({ min: 0, max: W }), y: fc.integer({ min: 0, max: H }) });
const zeroOn: fc.Arbitrary<ZeroZ> = fc.record({
  on: fc.constantFrom('top', 'bed'),
  at: fc.option(placeOn),
  tool: fc.constant(PAPER),
});

const pocket = (
  name: string,
  face: Feature['face'],
  cutter: Cutter,
  depthMm: number,
  at: Feature['at'],
  [widthMm, heightMm]: readonly [number, number],
): Feature => ({
  name,
  face,
  shape: { kind: 'rectangle', widthMm, heightMm, cornerRadiusMm: 0 },
  at,
  turnedRad: 0,
  cut: 'pocket',
  depthMm,
  through: false,
  cutter,
});

const ring = (
  name: string,
  face: Feature['face'],
  cutter: Cutter,
  depthMm: number,
  at: Feature['at'],
  diameterMm: number,
): Feature => ({
  ...pocket(name, face, cutter, depthMm, at, [0, 0]),
  shape: { kind: 'circle', diameterMm },
  cut: 'chamfer',
});

const needOf = (feature: string): Need => ({
  kind: 'depth',
  name: feature,
  feature,
  limits: LIMITS,
});
const webOf = (one: string, other: string): Need => ({
  kind: 'web',
  name: `${one} and ${other}`,
  features: [one, other],
  limits: LIMITS,
});

const sizeOf = (feature: string, along: 'x' | 'y'): Need => ({
  kind: 'size',
  name: `${feature} along ${along}`,
  feature,
  along,
  limits: LIMITS,
});

/** Wide enough to overlap however far aside. */
const sides = fc.tuple(fc.integer({ min: 40, max: 60 }), fc.integer({ min: 40, max: 60 }));
const beside = fc.integer({ min: -9, max: 9 });

export const thickJob: fc.Arbitrary<ThickJob> = fc
  .record({
    turn: fc.constantFrom<StopsJob['turn']>('about-x', 'about-y'),
    first: fc.constantFrom<StopsJob['first']>('front', 'back'),
    along: fc.constantFrom<'x' | 'y'>('x', 'y'),
    up: fc.constantFrom<'front' | 'back' | null>('front', 'back', null),
    pressedFlat: fc.boolean(),
    zeroes: fc.tuple(zeroOn, zeroOn),
    at: fc.record({ x: fc.integer({ min: 40, max: 240 }), y: fc.integer({ min: 40, max: 140 }) }),
    aside: fc.tuple(beside, beside, beside, beside),
    sizes: fc.tuple(sides, sides, sides),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ turn, first, along, up, pressedFlat, zeroes, at, aside, sizes, seed }) => {
    const plain = plainJob();
    const [a, b, c, d] = aside;
    const features = [
      pocket('dial', 'front', FLAT6, 6, at, sizes[0]),
      pocket('seat', 'front', FLAT3, 9, { x: at.x + a, y: at.y + b }, sizes[1]),
      pocket('movement', 'back', FLAT6, 12, { x: at.x + c, y: at.y + d }, sizes[2]),
      pocket('line', 'front', VEE, 3, at, sizes[1]),
      ring('ring', 'back', VEE, 2, at, sizes[0][0]),
    ];
    const cup = { ...plain.blank.cup, along, up, pressedFlat };
    return {
      seed,
      job: {
        ...plain,
        turn,
        first,
        blank: { ...plain.blank, widthMm: W, heightMm: H, thickMm: T, cup },
        features,
        zero: {
          frontUp: { ...plain.zero.frontUp, z: zeroes[0] },
          backUp: { ...plain.zero.frontUp, z: zeroes[1] },
        },
        needs: [
          ...features.map(({ name }) => needOf(name)),
          webOf('dial', 'movement'),
          webOf('seat', 'movement'),
          sizeOf('line', 'x'),
          sizeOf('line', 'y'),
          sizeOf('ring', 'x'),
          sizeOf('ring', 'y'),
        ],
      },
    };
  });
